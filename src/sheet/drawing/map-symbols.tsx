import type { Point, Segment } from '../../figure/geometry'
import { HAZARDS } from '../../hazard/kinds'
import type { HazardKind, Lay } from '../../plan/plan'

/** The `d` of a path along points, mm. */
export const pathOf = (points: readonly Point[], closed = false) =>
  `${points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(2)} ${y.toFixed(2)}`).join('')}${closed ? 'Z' : ''}`

const LAY_CLASS: Readonly<Record<Lay, string>> = {
  surface: 'wire',
  overhead: 'wire',
  buried: 'wire buried',
  water: 'wire under-water',
}

/** A hazard's course, one stroke over another, so that each kind differs in form, not in colour. */
export const HazardPath = ({ kind, d }: { kind: HazardKind; d: string }) => (
  <>
    {['bed', 'top'].map((part) => (
      <path key={part} class={`hazard ${HAZARDS[kind].stroke} ${part}`} d={d} />
    ))}
  </>
)

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

/** One leg of wire, by its lay. */
export const Wire = ({ points, lay, ticks }: { points: Segment; lay: Lay; ticks: readonly Segment[] }) => (
  <>
    <path class={LAY_CLASS[lay]} d={pathOf(points)} />
    {ticks.length > 0 && <path class="tick" d={ticks.map((tick) => pathOf(tick)).join('')} />}
  </>
)

export const MARKS = ['station', 'with supply', 'bend', 'splice', 'tag'] as const

/** A mark on a line or a station, as the map and its legend show it. */
export function MarkSymbol({ kind, at }: { kind: (typeof MARKS)[number]; at: Point }) {
  if (kind === 'bend') return <circle class="bend" cx={at[0]} cy={at[1]} r={0.8} />
  if (kind === 'splice') return <path class="splice" d={lozenge(at)} />
  if (kind === 'tag') return <path class="tag" d={tagMark(at)} />
  return <StationSymbol at={at} hasSupply={kind === 'with supply'} />
}
