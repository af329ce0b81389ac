import type { Position } from '../geo/position'
import type { MeasuredLine } from '../measure/measured'
import { joined, memoryOfRow, remembering } from '../memo'
import type { LineId, StationId } from '../plan/id'
import { inRow, lineRowOf } from '../plan/line-row'
import { type Line, type Plan, verticesOf } from '../plan/plan'
import type { Ground } from '../terrain/ground'
import { type GroundGap, groundGap } from './ground-gaps'
import { sharedPaths, spotOf } from './shared-paths'

/** The longest straight leg that is taken as meant, m: beyond it the reckoning of lengths is not promised either. */
const LONGEST_LEG_M = 20_000
/** Heights of the earth's dry land, m, with room: the Dead Sea's shore is at −430, Mount Everest at 8,849. */
const LOWEST_M = -500
const HIGHEST_M = 9000
/** Rise over run between the ends of a leg: over 45° nobody lays wire on foot. */
const STEEPEST = 1
/** Shorter legs may well climb a wall. */
const SHORT_LEG_M = 20
/** Ground so many times longer than the map: up and down all the way at 48° and more, as only heights that jump make it. */
const ROUGHEST = 1.5
/** What can hardly be meant, with the figures that a sentence needs. */
interface Doubts {
  'long-leg': { readonly legIndex: number; readonly mapM: number; readonly mostM: number }
  'steep-leg': { readonly legIndex: number; readonly riseM: number; readonly mapM: number }
  'rough-ground': { readonly mapM: number; readonly groundM: number }
  'height-off-earth': { readonly heightM: number }
  'ground-elsewhere': object
  'picture-for-ground': object
  'ground-gap': Omit<GroundGap, 'position'>
  'stations-on-one-spot': { readonly other: StationId }
  'line-on-line': { readonly other: LineId; readonly sharedM: number }
}

/** One thing that a person should look at: its code and figures, what it is about, and where that lies. */
export type Doubt = {
  readonly [C in keyof Doubts]: {
    readonly code: C
    /** Id of a line or a station; empty for the whole plan. */
    readonly where: string
    readonly position?: readonly [lonDeg: number, latDeg: number]
  } & Doubts[C]
}[keyof Doubts]

const placeOf = ([lonDeg, latDeg]: Position) => [lonDeg, latDeg] as const
/**
 * All that can hardly be meant in a plan and its ground: a slip of the pen, or heights that are none.
 *
 * @param settled the plan before what is in hand was taken up: whether things lie on each other is asked only of this
 */
export function doubtsOf(
  plan: Plan,
  measured: ReadonlyMap<LineId, MeasuredLine>,
  ground: Ground | undefined,
  settled: Plan = plan,
): readonly Doubt[] {
  const { lines: row } = lineRowOf(plan)
  const lengths = inRow(row, measured)
  const ofLines = remembered(row, [ground], [lengths], (line, place) =>
    legDoubts(plan, line, lengths[place]!, ground),
  )
  const { stations, lines, circuits } = settled
  const isGap = ({ code }: Doubt) => code === 'ground-gap'
  // Gaps stand last: of ground that covers only a corner there may be many.
  const all = joined(ofLines)
  const meets = ground !== undefined && lengths.some(({ legs }) => legs.some(({ onGrid }) => onGrid))
  return [
    ...all.filter((doubt) => !isGap(doubt)),
    ...(ground ? groundDoubts(measured.size > 0 && !meets, ground) : []),
    ...stationDoubts(stations),
    ...sharedPaths(stations, lines, circuits).map(
      ({ line, other, position, sharedM }): Doubt => ({
        code: 'line-on-line',
        where: line,
        position,
        other,
        sharedM,
      }),
    ),
    ...(meets ? all.filter(isGap) : []),
  ]
}

const remembered = memoryOfRow<Line, readonly Doubt[]>()

/** The worst leg of a line of each kind: one slip is told once. */
function legDoubts(plan: Plan, line: Line, measured: MeasuredLine, ground: Ground | undefined): Doubt[] {
  const doubts: Doubt[] = []
  const vertices = verticesOf(plan, line)
  let long: number | undefined
  for (const [i, { mapM }] of measured.legs.entries())
    if (mapM > LONGEST_LEG_M && mapM > (long === undefined ? 0 : measured.legs[long]!.mapM)) long = i
  if (long !== undefined) {
    const { mapM } = measured.legs[long]!
    const position = placeOf(vertices[long + 1]!)
    doubts.push({ code: 'long-leg', where: line.id, position, legIndex: long, mapM, mostM: LONGEST_LEG_M })
  }
  if (!ground) return doubts

  let before: number | undefined
  let steepest: (Doubt & { code: 'steep-leg' }) | undefined
  let off: (Doubt & { code: 'height-off-earth' }) | undefined
  for (const [i, vertex] of vertices.entries()) {
    const heightM = ground.heightM(vertex[0], vertex[1])
    const position = placeOf(vertex)
    if (heightM !== undefined && !(heightM >= LOWEST_M && heightM <= HIGHEST_M))
      off ??= { code: 'height-off-earth', where: line.id, position, heightM }
    const mapM = i > 0 ? measured.legs[i - 1]!.mapM : 0
    if (heightM !== undefined && before !== undefined && mapM > SHORT_LEG_M) {
      const riseM = Math.abs(heightM - before)
      const slope = riseM / mapM
      if (slope > STEEPEST && slope > (steepest ? steepest.riseM / steepest.mapM : 0))
        steepest = { code: 'steep-leg', where: line.id, position, legIndex: i - 1, riseM, mapM }
    }
    before = heightM
  }
  const { mapM, groundM } = measured
  if (groundM > ROUGHEST * mapM && mapM > SHORT_LEG_M)
    doubts.push({ code: 'rough-ground', where: line.id, position: placeOf(vertices[0]!), mapM, groundM })
  const gap = groundGap(vertices, measured.legs, ground)
  if (gap) doubts.push({ code: 'ground-gap', where: line.id, ...gap })
  return [...doubts, ...(off ? [off] : []), ...(steepest ? [steepest] : [])]
}

function groundDoubts(isElsewhere: boolean, ground: Ground): Doubt[] {
  return [
    ...(isElsewhere ? [{ code: 'ground-elsewhere', where: '' } as const] : []),
    ...(ground.hasEightBits ? [{ code: 'picture-for-ground', where: '' } as const] : []),
  ]
}

const stationDoubts = remembering((stations: Plan['stations']): readonly Doubt[] => {
  const first = new Map<number, StationId>()
  return [...stations.values()].flatMap(({ id, position }): Doubt[] => {
    const spot = spotOf(position)
    const other = first.get(spot)
    if (other === undefined) first.set(spot, id)
    return other === undefined
      ? []
      : [{ code: 'stations-on-one-spot', where: id, position: placeOf(position), other }]
  })
})
