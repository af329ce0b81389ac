import { pointOnLeg } from '../geo/leg-length'
import { onGlobe, type Position } from '../geo/position'
import { measureLine } from '../measure/measure-line'
import type { MeasuredLine } from '../measure/measured'
import type { LineId, StationId } from '../plan/id'
import { DEFAULT_ALLOWANCES, EMPTY_PLAN, type Lay, type Leg, type Line } from '../plan/plan'
import type { Ground } from '../terrain/ground'

/** Up to so many places the ways between all of them are sought over the ground: beyond, there are too many. */
export const MOST_SOUGHT = 8

/** A way that a line may take. */
export interface Way {
  readonly from: Position
  readonly to: Position
  readonly bends: readonly Position[]
  /** One more than there are bends. */
  readonly lays: readonly Lay[]
  /** What a line there takes of wire, with its slack and both its tails, m. */
  readonly wireM: number
  readonly mapM: number
}

type Course = Pick<Way, 'from' | 'to' | 'bends' | 'lays'>

export const legsOf = (lays: readonly Lay[]): readonly Leg[] => lays.map((lay) => ({ lay }))

/** A way with its lengths, by the allowances that a plan starts with. */
export function wayAlong(course: Course, ground?: Ground): Way {
  const { mapM, wireM } = measured(course, ground)
  return { ...course, mapM, wireM }
}

function measured({ from, to, bends, lays }: Course, ground?: Ground): MeasuredLine {
  const [a, b] = ['a', 'b'] as [StationId, StationId]
  const station = (id: StationId, position: Position) => [id, { id, name: '', note: '', position }] as const
  const line = {
    id: 'way' as LineId,
    from: a,
    to: b,
    wire: '',
    pairs: 1,
    return: 'pair',
    legs: legsOf(lays),
    bends,
  } satisfies Line
  const stations = new Map([station(a, from), station(b, to)])
  return measureLine({ ...EMPTY_PLAN, stations }, line, ground)
}

/** The same way from its other end. */
export const wayBack = ({ from, to, bends, lays, ...lengths }: Way): Way => ({
  ...lengths,
  from: to,
  to: from,
  bends: bends.toReversed(),
  lays: lays.toReversed(),
})

/** Shorter than this a stretch of a way gets no wire of its own, m on the map: a joint there would be nearer than it is worth. */
const LEAST_M = 10

/**
 * A way in two, of which the first takes as much wire as is given, or a little less: positions are held to a centimetre. Undefined
 * where one of the two would be too short to be worth a joint.
 *
 * @param wireM for the first of the two, its tails with it
 */
export function splitWay(way: Way, wireM: number, ground?: Ground): readonly [Way, Way] | undefined {
  const { tailM } = DEFAULT_ALLOWANCES
  let wantedM = wireM - 2 * tailM
  const whole = measured(way, ground)
  const points = [way.from, ...way.bends, way.to]
  for (let turn = 0; turn < 6; turn++) {
    let leftM = wantedM
    const leg = whole.legs.findIndex(({ laidM }) => {
      if (leftM <= laidM) return true
      leftM -= laidM
      return false
    })
    if (leg < 0 || leftM < 0) return undefined
    const share = leftM / whole.legs[leg]!.laidM
    const joint = onGlobe(pointOnLeg(points[leg]!, points[leg + 1]!, share))
    const near = wayAlong(
      { from: way.from, to: joint, bends: way.bends.slice(0, leg), lays: way.lays.slice(0, leg + 1) },
      ground,
    )
    if (near.wireM > wireM) {
      wantedM -= near.wireM - wireM + 0.01
      continue
    }
    const far = wayAlong(
      { from: joint, to: way.to, bends: way.bends.slice(leg), lays: way.lays.slice(leg) },
      ground,
    )
    return near.mapM >= LEAST_M && far.mapM >= LEAST_M ? [near, far] : undefined
  }
  return undefined
}
