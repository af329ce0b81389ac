import type { Point, Segment } from '../../figure/geometry'
import type { DoneSign } from '../../figure/legend'
import { BEND_RADIUS, LINE_STEP_MM, SPLICE_SIGN, TAG_SIGN, TEST_POINT_RIM } from '../../figure/line-signs'
import { PLATE, SIGN_STROKES, STEP_MM, type StationSign } from '../../figure/station-signs'
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

/** One station: a terminal block with the sign of what stands there, as on the screen. */
export function StationSymbol({ at: [x, y], sign }: { at: Point; sign: StationSign }) {
  const { look, from } = SIGN_STROKES[sign]
  const { width, height, rounding } = PLATE
  return (
    <g class="station" transform={`translate(${x.toFixed(2)} ${y.toFixed(2)}) scale(${STEP_MM})`}>
      <rect x={-width / 2} y={-height / 2} width={width} height={height} rx={rounding} />
      <path class={look} d={from.map(([dx, dy, steps]) => `M${dx} ${dy}${steps}`).join('')} />
    </g>
  )
}

/** One leg of wire, by its lay. */
export const Wire = ({
  points,
  lay,
  ticks,
  isTrunk = false,
}: {
  points: Segment
  lay: Lay
  ticks: readonly Segment[]
  isTrunk?: boolean
}) => (
  <>
    <path class={`${LAY_CLASS[lay]}${isTrunk ? ' trunk' : ''}`} d={pathOf(points)} />
    {isTrunk && <path class="trunk-core" d={pathOf(points)} />}
    {ticks.length > 0 && <path class="tick" d={ticks.map((tick) => pathOf(tick)).join('')} />}
  </>
)

/** What was done on a stretch of wire: under the wire edges to it, over it beads, or a trace of what is gone. */
export const DoneStroke = ({
  points,
  sign,
  where,
}: {
  points: readonly Point[]
  sign: DoneSign
  where: 'under' | 'over'
}) => (
  <>
    {DONE_STROKES[sign][where].map((name) => (
      <path key={name} class={name} d={pathOf(points)} />
    ))}
  </>
)

const DONE_STROKES: Readonly<Record<DoneSign, Readonly<Record<'under' | 'over', readonly string[]>>>> = {
  laid: { under: ['done-edges', 'done-gap'], over: [] },
  tested: { under: [], over: ['done-beads'] },
  recovered: { under: [], over: ['done-gone', 'done-trace'] },
}

type Mark = keyof typeof SIGN_OF_MARK | 'bend' | 'splice' | 'tag'

const SIGN_OF_MARK = {
  station: 'telephone',
  supply: 'supply',
  board: 'board',
  exchange: 'exchange',
} as const satisfies Readonly<Record<string, StationSign>>

const SIGNS_ASKED: readonly Mark[] = ['board', 'exchange']

/** The marks that a legend explains: boards and exchanges only where there are any. */
export const marksFor = (signs: ReadonlySet<StationSign>): readonly Mark[] => [
  'station',
  'supply',
  ...SIGNS_ASKED.filter((mark) => signs.has(mark as StationSign)),
  'bend',
  'splice',
  'tag',
]

/** A mark on a line or a station, as the map and its legend show it. */
export function MarkSymbol({
  kind,
  at,
  isTestPoint = false,
}: {
  kind: Mark
  at: Point
  isTestPoint?: boolean
}) {
  if (kind !== 'bend' && kind !== 'splice' && kind !== 'tag')
    return <StationSymbol at={at} sign={SIGN_OF_MARK[kind]} />
  return (
    <g
      class="line-sign"
      transform={`translate(${at[0].toFixed(2)} ${at[1].toFixed(2)}) scale(${LINE_STEP_MM})`}
    >
      {kind === 'bend' && <circle r={BEND_RADIUS} />}
      {kind === 'splice' && <path d={SPLICE_SIGN} />}
      {kind === 'tag' && <path d={TAG_SIGN} />}
      {isTestPoint && <path class="rim" d={TEST_POINT_RIM} />}
    </g>
  )
}
