import type { HazardKind, Lay } from '../../plan/plan'
import type { Point, Segment } from './geometry'
import { formatScale } from './map-scale'
import type { NetDrawing } from './net-drawing'

const pathOf = (points: readonly Point[], closed = false) =>
  `${points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(2)} ${y.toFixed(2)}`).join('')}${closed ? 'Z' : ''}`

const Stroke = ({ at, kind }: { at: Segment; kind: string }) => <path class={kind} d={pathOf(at)} />

const LAY_CLASS: Readonly<Record<Lay, string>> = {
  surface: 'wire',
  overhead: 'wire',
  buried: 'wire buried',
  water: 'wire under-water',
}

/** How a hazard is drawn: one stroke over another, so that each kind differs in form, not in colour. */
const HAZARD_STROKES: Readonly<Record<HazardKind, readonly string[]>> = {
  road: ['road', 'road-bed'],
  track: ['track'],
  railway: ['rail', 'sleepers'],
  water: ['water'],
  'power-line': ['power-line', 'pylons'],
  'keep-out': ['keep-out'],
}

/** One station: a terminal block with two posts, or with a cross where the supply stands. */
export function StationSymbol({ at: [x, y], hasSupply }: { at: Point; hasSupply: boolean }) {
  return (
    <g class="station" transform={`translate(${x.toFixed(2)} ${y.toFixed(2)})`}>
      <rect x={-2.6} y={-1.8} width={5.2} height={3.6} rx={0.8} />
      {hasSupply ? (
        <path d="M-1.2 0H1.2M0 -1V1" />
      ) : (
        <>
          <circle cx={-1} r={0.5} />
          <circle cx={1} r={0.5} />
        </>
      )}
    </g>
  )
}

const lozenge = ([x, y]: Point) => `M${x} ${y - 1.5}l1.5 1.5l-1.5 1.5l-1.5 -1.5z`

export function NorthArrow({ at: [x, y] }: { at: Point }) {
  return (
    <g class="north" transform={`translate(${x} ${y})`}>
      <path d="M0 7V-1M-1.4 1.6L0 -1.4L1.4 1.6" />
      <text x={2} y={2}>
        N
      </text>
    </g>
  )
}

const LEGEND: readonly (readonly [Lay, string])[] = [
  ['surface', 'on the ground'],
  ['overhead', 'overhead'],
  ['buried', 'buried'],
  ['water', 'under water'],
]

/** Scale bar, stated scale, legend and north, in the band below the frame. */
function FootBand({ drawing }: { drawing: NetDrawing }) {
  const { frame, bar } = drawing
  const y = frame.bottom + 6.5
  const legendLeft = frame.left + 80
  return (
    <g class="foot-band">
      <path class="bar" d={`M${frame.left} ${y - 1.5}v1.5h${bar.lengthMm}v-1.5m${-bar.lengthMm / 2} .5v1`} />
      <text x={frame.left + bar.lengthMm + 1.5} y={y + 0.6}>
        {bar.text}
      </text>
      <text x={frame.left} y={y + 3.8}>
        {`Scale ${formatScale(drawing.scale)} · grid in degrees, WGS 84`}
      </text>
      {LEGEND.map(([lay, name], i) => {
        const x = legendLeft + (i % 2) * 44
        const row = y - 2 + Math.floor(i / 2) * 4.6
        return (
          <g key={lay}>
            <path class={LAY_CLASS[lay]} d={`M${x} ${row}h9`} />
            {lay === 'overhead' && <path class="tick" d={`M${x + 2.5} ${row - 1.1}v2.2m4 -2.2v2.2`} />}
            <text x={x + 11} y={row + 0.9}>
              {name}
            </text>
          </g>
        )
      })}
      <NorthArrow at={[frame.right - 7, frame.bottom + 3]} />
    </g>
  )
}

/** A map drawn from the plan alone, in mm, black on white. `id` keeps its clipping apart from another map's. */
export function NetMap({ drawing, id }: { drawing: NetDrawing; id: string }) {
  const { frame } = drawing
  const clip = `frame-${id}`
  return (
    <svg
      class="net-map"
      viewBox={`0 0 ${drawing.widthMm} ${drawing.heightMm}`}
      role="img"
      aria-label={`Map of the net, scale ${formatScale(drawing.scale)}`}
    >
      <defs>
        <clipPath id={clip}>
          <rect
            x={frame.left}
            y={frame.top}
            width={frame.right - frame.left}
            height={frame.bottom - frame.top}
          />
        </clipPath>
        <pattern
          id={`hatch-${id}`}
          width="2"
          height="2"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <path class="hatch" d="M0 0V2" />
        </pattern>
      </defs>
      <g class="grid">
        {drawing.grid.map((line) => (
          <path key={line.label} d={pathOf(line.points)} />
        ))}
      </g>
      <g clip-path={`url(#${clip})`}>
        {drawing.hazards.flatMap(({ kind, rings, closed }, i) => {
          const d = rings.map((ring) => pathOf(ring, closed)).join('')
          const fill = closed ? (
            <path key={`${i} fill`} d={d} fill={`url(#hatch-${id})`} fill-rule="evenodd" />
          ) : null
          return [
            fill,
            ...HAZARD_STROKES[kind].map((name) => (
              <path key={`${i} ${name}`} class={`hazard ${name}`} d={d} />
            )),
          ]
        })}
        {drawing.legs.map(({ lay, points, ticks }, i) => (
          <g key={i}>
            <Stroke at={points} kind={LAY_CLASS[lay]} />
            {ticks.map((tick, k) => (
              <Stroke key={k} at={tick} kind="tick" />
            ))}
          </g>
        ))}
        {drawing.bends.map(([x, y], i) => (
          <circle key={i} class="bend" cx={x} cy={y} r={0.8} />
        ))}
        {drawing.splices.map((at, i) => (
          <path key={i} class="splice" d={lozenge(at)} />
        ))}
        {drawing.stations.map((station, i) => (
          <StationSymbol key={i} {...station} />
        ))}
        {drawing.labels.map(({ label, box, leader, style }) => (
          <g key={label.id} class={`label ${style}`}>
            {leader && <Stroke at={leader} kind="leader" />}
            <text x={(box.left + box.right) / 2} y={box.bottom - label.heightMm * 0.24} text-anchor="middle">
              {label.text}
            </text>
          </g>
        ))}
      </g>
      <rect
        class="frame"
        x={frame.left}
        y={frame.top}
        width={frame.right - frame.left}
        height={frame.bottom - frame.top}
      />
      <g class="grid-label">
        {drawing.grid.map(({ points, label, edge }) =>
          edge === 'top' ? (
            <text key={label} x={points[0][0]} y={frame.top - 1} text-anchor="middle">
              {label}
            </text>
          ) : (
            <text
              key={label}
              transform={`translate(${frame.left - 1} ${points[0][1]}) rotate(-90)`}
              text-anchor="middle"
            >
              {label}
            </text>
          ),
        )}
      </g>
      <FootBand drawing={drawing} />
    </svg>
  )
}
