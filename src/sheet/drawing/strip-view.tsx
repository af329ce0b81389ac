import type { StripDrawing } from '../../figure/strip'
import { crossTicks } from '../../figure/wire-strokes'
import { DoneStroke, LineSigns, StationSymbol, Wire } from './map-symbols'
import './strip.css'

/** A line drawn straight, with its profile above it and its scales below, in mm. */
export function StripView({ drawing, name }: { drawing: StripDrawing; name: string }) {
  const { widthMm, heightMm, left, right, wireY, legs, done, marks, labels, matches, profile, scales } =
    drawing
  const doneStrokes = (where: 'under' | 'over') =>
    done.map(({ sign, fromX, toX }, i) => {
      const points = [
        [fromX, wireY],
        [toX, wireY],
      ] as const
      return <DoneStroke key={i} points={points} sign={sign} where={where} />
    })
  const leaders = labels
    .map(({ leader }) => (leader ? `M${leader[0]} ${leader[1]}V${leader[2]}` : ''))
    .join('')
  const marksOf = (wanted: (typeof marks)[number]['kind']) =>
    marks.flatMap(({ kind, x, isTestPoint }) =>
      kind === wanted ? [{ at: [x, wireY] as const, isTestPoint }] : [],
    )
  const placesOf = (wanted: (typeof marks)[number]['kind']) => marksOf(wanted).map(({ at }) => at[0])
  const [crossings, cautions] = [placesOf('crossing'), placesOf('caution')]
  return (
    <svg
      class="strip-view"
      viewBox={`0 0 ${widthMm} ${heightMm.toFixed(2)}`}
      role="img"
      aria-label={`${name}, drawn straight`}
    >
      {profile && (
        <g class="strip-profile">
          <path class="body" d={profile.body} />
          <path class="ground" d={profile.ground} />
          <path class="hung" d={profile.hung} />
          {profile.heights.map(({ y, text }) => (
            <text key={text} x={left - 1} y={y + 1} text-anchor="end">
              {text}
            </text>
          ))}
        </g>
      )}
      {leaders && <path class="leader" d={leaders} />}
      {doneStrokes('under')}
      {legs.map(({ lay, fromX, toX }, i) => {
        const points = [
          [fromX, wireY],
          [toX, wireY],
        ] as const
        return <Wire key={i} points={points} lay={lay} ticks={lay === 'overhead' ? crossTicks(points) : []} />
      })}
      {doneStrokes('over')}
      {crossings.length > 0 && (
        <path
          class="crossing"
          d={crossings.map((x) => `M${x - 0.6} ${wireY - 2.2}v4.4m1.2 0v-4.4`).join('')}
        />
      )}
      {cautions.length > 0 && (
        <g class="caution">
          <path d={cautions.map((x) => `M${x} ${wireY + 2.1}l1.9 3.3h-3.8z`).join('')} />
          <path d={cautions.map((x) => `M${x} ${wireY + 3.2}v1.1m0 .35v.3`).join('')} />
        </g>
      )}
      <LineSigns kind="bend" marks={marksOf('bend')} />
      <LineSigns kind="tag" marks={marksOf('tag')} />
      <LineSigns kind="splice" marks={marksOf('splice')} />
      {marksOf('station').map(({ at }) => (
        <StationSymbol key={at[0]} at={at} sign="telephone" />
      ))}
      {labels.map(({ text, x, y, anchor, isBold }, i) => (
        <text key={i} class={isBold ? 'named' : undefined} x={x} y={y} text-anchor={anchor}>
          {text}
        </text>
      ))}
      {matches.map(({ x, text, isStart }) => (
        <g key={text}>
          <path class="match-line" d={`M${x} ${wireY - 6}V${heightMm}`} />
          <text x={isStart ? x + 0.8 : x - 0.8} y={wireY + 6.2} text-anchor={isStart ? 'start' : 'end'}>
            {text}
          </text>
        </g>
      ))}
      {scales.map(({ name: scale, y, ticks }) => (
        <g key={scale} class="scale">
          <text class="named" x={0} y={y + 2.6}>
            {scale}
          </text>
          {/* One path and one text for all ticks: a browser that prints sixty cards spends most of its time on such elements. */}
          <path d={`M${left} ${y}H${right}${ticks.map(({ x }) => `M${x} ${y}v1.2`).join('')}`} />
          <text y={y + 3.9} text-anchor="middle">
            {ticks.map(({ x, text }) => (
              <tspan key={text} x={x}>
                {text}
              </tspan>
            ))}
          </text>
        </g>
      ))}
    </svg>
  )
}
