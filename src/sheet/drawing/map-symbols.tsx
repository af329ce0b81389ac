import type { Point, Segment } from '../../figure/geometry'
import type { DoneSign } from '../../figure/legend'
import { BEND_RADIUS, LINE_STEP_MM, SPLICE_SIGN, TAG_SIGN, TEST_POINT_RIM } from '../../figure/line-signs'
import { signAt } from '../../figure/sign-at'
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

export type Mark = keyof typeof SIGN_OF_MARK | 'bend' | 'splice' | 'tag'

export const SIGN_OF_MARK = {
  station: 'telephone',
  supply: 'supply',
  board: 'board',
  exchange: 'exchange',
} as const satisfies Readonly<Record<string, StationSign>>

/** A mark on a line or a station, as the legend of a map shows it. */
export const MarkSymbol = ({ kind, at }: { kind: Mark; at: Point }) =>
  kind === 'bend' || kind === 'splice' || kind === 'tag' ? (
    <LineSigns kind={kind} marks={[{ at }]} />
  ) : (
    <StationSymbol at={at} sign={SIGN_OF_MARK[kind]} />
  )

/** Marks of one kind on a line, all in one path: a browser that prints hundreds of maps takes its time for each element. */
export function LineSigns({
  kind,
  marks,
}: {
  kind: 'bend' | 'splice' | 'tag'
  marks: readonly { readonly at: Point; readonly isTestPoint?: boolean }[]
}) {
  if (marks.length === 0) return null
  const drawn = (some: typeof marks, sign: string) =>
    some.map(({ at: [x, y] }) => signAt(sign, { x: x / LINE_STEP_MM, y: y / LINE_STEP_MM })).join('')
  const rims = marks.filter(({ isTestPoint }) => isTestPoint)
  return (
    <g class="line-sign" transform={`scale(${LINE_STEP_MM})`}>
      <path d={kind === 'bend' ? marks.map(ringAt).join('') : drawn(marks, SIGNS[kind])} />
      {rims.length > 0 && <path class="rim" d={drawn(rims, TEST_POINT_RIM)} />}
    </g>
  )
}

const SIGNS = { splice: SPLICE_SIGN, tag: TAG_SIGN } as const

const ringAt = ({ at: [x, y] }: { readonly at: Point }): string =>
  `M${(x / LINE_STEP_MM - BEND_RADIUS).toFixed(1)} ${(y / LINE_STEP_MM).toFixed(1)}` +
  `a${BEND_RADIUS} ${BEND_RADIUS} 0 1 0 ${2 * BEND_RADIUS} 0a${BEND_RADIUS} ${BEND_RADIUS} 0 1 0 ${-2 * BEND_RADIUS} 0`
