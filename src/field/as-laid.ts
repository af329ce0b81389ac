import { planeAbout } from '../geo/plane'
import type { Position } from '../geo/position'
import type { MeasuredLine } from '../measure/measured'
import { standingRecords } from '../plan/field-records'
import type { LineId } from '../plan/id'
import { LIMITS } from '../plan/limits'
import { type Leg, type Plan, verticesOf } from '../plan/plan'
import { withLine } from '../plan/with-feature'
import { bad, ok, type Result } from '../problem'
import { offLineM, smoothTrack } from './smooth-track'

/** Bends so near to a station are its own, m. */
const AT_STATION_M = 10

/**
 * Leads a line the way that was walked in one of its `track` records. Each new leg is laid as the old one was that it lies nearest to. The
 * plan itself where no such record stands.
 */
export function layAsWalked(plan: Plan, record: string): Plan {
  const track = standingRecords(plan).find(({ id }) => id === record)
  const line = track && plan.lines.get(track.line)
  if (track?.kind !== 'track' || !line || track.points.length < 2) return plan
  const before = verticesOf(plan, line)
  const plane = planeAbout(before)
  const old = before.map((each) => plane.toPlane(each))
  const [from, to] = [old[0]!, old.at(-1)!]
  const apart = (a: readonly [number, number], b: readonly [number, number]) =>
    Math.hypot(a[0] - b[0], a[1] - b[1])
  const walked = smoothTrack(track.points)
  const way = walked.map((each) => plane.toPlane(each))
  const [start, end] = [way[0]!, way.at(-1)!]
  const isForward = apart(start, from) + apart(end, to) <= apart(start, to) + apart(end, from)
  const places = walked.map((position, k) => ({ position, at: way[k]! }))
  const inOrder = isForward ? places : places.toReversed()
  const inner = inOrder.filter(({ at }) => apart(at, from) > AT_STATION_M && apart(at, to) > AT_STATION_M)
  const stops = [from, ...inner.map(({ at }) => at), to]
  const legs = stops.slice(1).map((next, k): Leg => {
    const last = stops[k]!
    const middle = [(last[0] + next[0]) / 2, (last[1] + next[1]) / 2] as const
    let nearest = 0
    let leastM = Number.POSITIVE_INFINITY
    for (let leg = 0; leg < line.legs.length; leg++) {
      const offM = offLineM(middle, old[leg]!, old[leg + 1]!)
      if (offM < leastM) [nearest, leastM] = [leg, offM]
    }
    const { note: _, unknown: __, ...as } = line.legs[nearest]!
    return as
  })
  const bends = inner.map(({ position }): Position => position)
  return withLine(plan, { ...line, bends, legs })
}

/**
 * Gives a line the slack that makes its wire as long as was really used, tails included. Refused where that is less than its way, or more
 * slack than a leg may have.
 *
 * @param measured the line as it is
 */
export function setUsedWire(
  plan: Plan,
  id: LineId,
  measured: Pick<MeasuredLine, 'laidM' | 'wireM'>,
  wireM: number,
): Result<Plan> {
  const line = plan.lines.get(id)
  if (!line || measured.laidM <= 0) return ok(plan)
  const tailsM = measured.wireM - measured.laidM
  const factor = (wireM - tailsM) / measured.laidM
  const slackOf = ({ lay, slackPct }: Leg) => slackPct ?? plan.allowances.slackPct[lay]
  const legs = line.legs.map((leg) => ({ ...leg, slackPct: 100 * ((1 + slackOf(leg) / 100) * factor - 1) }))
  const { min, max } = LIMITS.legSlackPct
  if (legs.some(({ slackPct }) => slackPct < min - 1e-6 || slackPct > max)) {
    const message =
      factor < 1
        ? `${wireM.toFixed(0)} m of wire do not reach along this way: lead the line as it was walked first.`
        : `${wireM.toFixed(0)} m of wire are far more than this way takes: lead the line as it was walked first.`
    return bad({ code: 'no-such-slack', at: id, message })
  }
  const held = legs.map((leg) => ({ ...leg, slackPct: Math.max(0, leg.slackPct) }))
  return ok(withLine(plan, { ...line, legs: held }))
}
