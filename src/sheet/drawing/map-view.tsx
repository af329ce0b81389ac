import type { HazardKind, Lay } from '../../plan/plan'
import type { Norths } from '../paper-source'
import type { Box, Point, Segment } from './geometry'
import type { MapDrawing } from './map-drawing'
import { formatScale } from './map-scale'
import { NorthDiagram } from './north-diagram'

/** Bands beside the frame: the grid's labels stand above and to the left, scale and legend below. */
const GRID_BAND_MM = 4.5
const FOOT_BAND_MM = 16

/** The frame of a map inside a drawing of this size, mm. */
export const frameIn = (widthMm: number, heightMm: number): Box => ({
  left: GRID_BAND_MM,
  top: GRID_BAND_MM,
  right: widthMm - 0.3,
  bottom: heightMm - FOOT_BAND_MM,
})

const pathOf = (points: readonly Point[], closed = false) =>
  `${points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(2)} ${y.toFixed(2)}`).join('')}${closed ? 'Z' : ''}`

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

const lozenge = ([x, y]: Point) => `M${x.toFixed(2)} ${(y - 1.5).toFixed(2)}l1.5 1.5l-1.5 1.5l-1.5 -1.5z`
const tagMark = ([x, y]: Point) => `M${x.toFixed(2)} ${y.toFixed(2)}m-.8 -.8h1.6v1.6h-1.6z`

const Wire = ({ points, lay, ticks }: { points: Segment; lay: Lay; ticks: readonly Segment[] }) => (
  <>
    <path class={LAY_CLASS[lay]} d={pathOf(points)} />
    {ticks.length > 0 && <path class="tick" d={ticks.map((tick) => pathOf(tick)).join('')} />}
  </>
)

const LAYS: readonly (readonly [Lay, string])[] = [
  ['surface', 'S surface'],
  ['overhead', 'O overhead'],
  ['buried', 'B buried'],
  ['water', 'W under water'],
]

const HAZARDS: readonly (readonly [HazardKind, string])[] = [
  ['road', 'road'],
  ['track', 'track'],
  ['railway', 'railway'],
  ['water', 'water'],
  ['power-line', 'power line'],
  ['keep-out', 'keep out'],
]

const MARKS = ['station', 'with supply', 'bend', 'splice', 'tag'] as const

function MarkSymbol({ kind, at }: { kind: (typeof MARKS)[number]; at: Point }) {
  if (kind === 'bend') return <circle class="bend" cx={at[0]} cy={at[1]} r={0.8} />
  if (kind === 'splice') return <path class="splice" d={lozenge(at)} />
  if (kind === 'tag') return <path class="tag" d={tagMark(at)} />
  return <StationSymbol at={at} hasSupply={kind === 'with supply'} />
}

/** Scale bar, stated scale and the legend, in the band below the frame. */
function FootBand({ drawing, frame }: { drawing: MapDrawing; frame: Box }) {
  const { bar, grid, window } = drawing
  const y = frame.bottom + 5
  const kinds = new Set(drawing.hazards.map(({ kind }) => kind))
  const hazards = HAZARDS.filter(([kind]) => kinds.has(kind))
  const left = frame.left + 62
  const cell = (frame.right - left) / 6
  const cellAt = (i: number): Point => [left + (i % 6) * cell, y - 1 + Math.floor(i / 6) * 4.6]
  return (
    <g class="foot-band">
      <path class="bar" d={`M${frame.left} ${y - 1.5}v1.5h${bar.lengthMm}v-1.5m${-bar.lengthMm / 2} .5v1`} />
      <text x={frame.left + bar.lengthMm + 1.5} y={y + 0.6}>
        {bar.text}
      </text>
      <text x={frame.left} y={y + 4.4}>
        {`Scale ${formatScale(window.scale)}, WGS 84, true north up`}
      </text>
      <text x={frame.left} y={y + 8.4}>
        {grid.name}
      </text>
      {MARKS.map((kind, i) => {
        const [x, row] = cellAt(i)
        return (
          <g key={kind}>
            <MarkSymbol kind={kind} at={[x + 2.6, row]} />
            <text x={x + 6.4} y={row + 0.9}>
              {kind}
            </text>
          </g>
        )
      })}
      {LAYS.map(([lay, name], i) => {
        const [x, row] = cellAt(6 + i)
        const points = [
          [x, row],
          [x + 5.5, row],
        ] as const
        const ticks =
          lay === 'overhead'
            ? [1.6, 3.9].map(
                (dx) =>
                  [
                    [x + dx, row - 1.1],
                    [x + dx, row + 1.1],
                  ] as const,
              )
            : []
        return (
          <g key={lay}>
            <Wire points={points} lay={lay} ticks={ticks} />
            <text x={x + 6.4} y={row + 0.9}>
              {name.slice(2)}
            </text>
          </g>
        )
      })}
      {hazards.map(([kind, name], i) => {
        const [x, row] = cellAt(12 + i)
        return (
          <g key={kind}>
            {HAZARD_STROKES[kind].map((stroke) => (
              <path key={stroke} class={`hazard ${stroke}`} d={`M${x} ${row}h5.5`} />
            ))}
            <text x={x + 6.4} y={row + 0.9}>
              {name}
            </text>
          </g>
        )
      })}
    </g>
  )
}

/** A map drawn from the plan alone, in mm, black on white. `id` keeps its clipping apart from another map's. */
export function MapView({
  drawing,
  norths,
  size: [widthMm, heightMm],
  id,
}: {
  drawing: MapDrawing
  norths: Norths
  size: readonly [widthMm: number, heightMm: number]
  id: string
}) {
  const { frame } = drawing.window
  const box = {
    x: frame.left,
    y: frame.top,
    width: frame.right - frame.left,
    height: frame.bottom - frame.top,
  }
  return (
    <svg
      class="map-view"
      viewBox={`0 0 ${widthMm} ${heightMm}`}
      role="img"
      aria-label={`Map, scale ${formatScale(drawing.window.scale)}`}
    >
      <defs>
        <clipPath id={`frame-${id}`}>
          <rect {...box} />
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
        {drawing.grid.lines.map((line) => (
          <path key={line.label} d={pathOf(line.points)} />
        ))}
      </g>
      <g clip-path={`url(#frame-${id})`}>
        {drawing.hazards.map(({ kind, rings, closed }, i) => {
          const d = rings.map((ring) => pathOf(ring, closed)).join('')
          return (
            <g key={i}>
              {closed && (
                <path class="area" d={d} style={{ fill: `url(#hatch-${id})` }} fill-rule="evenodd" />
              )}
              {HAZARD_STROKES[kind].map((stroke) => (
                <path key={stroke} class={`hazard ${stroke}`} d={d} />
              ))}
            </g>
          )
        })}
        {drawing.legs.map((leg, i) =>
          leg.isSubject ? (
            <Wire key={i} {...leg} />
          ) : (
            <path key={i} class="other-wire" d={pathOf(leg.points)} />
          ),
        )}
        {drawing.bends.map((at, i) => (
          <MarkSymbol key={i} kind="bend" at={at} />
        ))}
        {drawing.tags.map((at, i) => (
          <MarkSymbol key={i} kind="tag" at={at} />
        ))}
        {drawing.splices.map((at, i) => (
          <MarkSymbol key={i} kind="splice" at={at} />
        ))}
        {drawing.stations.map((station, i) => (
          <StationSymbol key={i} {...station} />
        ))}
        {drawing.matches.map(({ points }, i) => (
          <path key={i} class="match-line" d={pathOf(points)} />
        ))}
        {drawing.labels.map(({ label, box: { left, right, bottom }, leader, style }) => (
          <g key={label.id} class={`label ${style}`}>
            {leader && <path class="leader" d={pathOf(leader)} />}
            <text x={(left + right) / 2} y={bottom - label.heightMm * 0.24} text-anchor="middle">
              {label.text}
            </text>
          </g>
        ))}
      </g>
      <rect class="frame" {...box} />
      <g class="grid-label">
        {drawing.grid.lines.map(({ points, label, edge }) => {
          const [x, y] = points[0]
          if (edge === 'top') {
            return y > frame.top + 0.1 ? null : (
              <text key={label} x={x} y={frame.top - 1} text-anchor="middle">
                {label}
              </text>
            )
          }
          return x > frame.left + 0.1 ? null : (
            <text
              key={label}
              transform={`translate(${frame.left - 1} ${y}) rotate(-90)`}
              text-anchor="middle"
            >
              {label}
            </text>
          )
        })}
      </g>
      <FootBand drawing={drawing} frame={frame} />
      <NorthDiagram norths={norths} at={[frame.left + 55, frame.bottom + 13]} />
    </svg>
  )
}
