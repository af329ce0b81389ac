import { offLineM } from '../geo/bends-kept'
import { type PlanePoint, planeAbout } from '../geo/plane'
import type { Position } from '../geo/position'
import type { MeasuredLine } from '../measure/measured'
import { nearestOnLine } from '../measure/nearest-on-line'
import { wireMAtGroundM, wireMOnLeg } from '../measure/place-on-line'
import { addRecord, undoRecord } from '../plan/add-record'
import type { LineId } from '../plan/id'
import { LIMITS } from '../plan/limits'
import { type Leg, type Line, type Plan, verticesOf } from '../plan/plan'
import { type StandingRecord, standingRecords } from '../plan/standing-records'
import { withLine } from '../plan/with-feature'
import { bad, ok, type Result } from '../problem'
import { smoothTrack } from './smooth-track'

/** Bends so near to a station are its own, m. */
const AT_STATION_M = 10
/** A track that ends farther from a station than this did not lead there, m. */
const REACHES_M = 50

type Track = Extract<StandingRecord, { readonly kind: 'track' }>

/** What a further record is known by. */
interface By {
  readonly id: string
  readonly at?: string
  readonly by?: string
}

/** How long a line is: with the ground under it, as the report has it. */
type Measure = (plan: Plan, line: Line) => MeasuredLine

/**
 * Leads a line the way that was walked in one of its `track` records, and adds a record of that which keeps the way before. What was recorded
 * before stays where it was on the ground. Each new leg is laid as the old one was that it lies nearest to. The plan itself where no such
 * record stands.
 */
export function layAsWalked(plan: Plan, track: string, by: By, measure: Measure): Plan {
  const record = standingRecords(plan).find(({ id }) => id === track)
  const line = record && plan.lines.get(record.line)
  if (record?.kind !== 'track' || !line || record.points.length < 2) return plan
  const led = { ...line, ...walkedWay(plan, line, record) }
  const now = withLine(plan, led)
  const { bends, legs } = line
  const wire = wirePairs(plan, line, now, led, measure)
  const done = addRecord(now, { ...by, line: line.id, kind: 'as-laid', planned: { bends, legs }, wire })
  if (!done.ok) throw new Error(done.problems[0]!.message)
  return done.value
}

/** Leads a line the way again that it was led before a record `as-laid`, which a further one undoes. The plan itself where none stands. */
export function layAsPlanned(plan: Plan, id: string, by: By): Plan {
  const record = standingRecords(plan).find((each) => each.id === id)
  const line = record && plan.lines.get(record.line)
  if (record?.kind !== 'as-laid' || !line) return plan
  const back = record.planned ? withLine(plan, { ...line, ...record.planned }) : plan
  return undoRecord(back, id, by)
}

function walkedWay(plan: Plan, line: Line, { points }: Track): Pick<Line, 'bends' | 'legs'> {
  const before = verticesOf(plan, line)
  const plane = planeAbout(before)
  const old = before.map((each) => plane.toPlane(each))
  const [from, to] = [old[0]!, old.at(-1)!]
  const walked = smoothTrack(points).map((position): Placed => ({ position, at: plane.toPlane(position) }))
  const along = ({ at }: Placed) => nearestOnPath(at, old)
  const isForward = isBefore(along(walked[0]!), along(walked.at(-1)!))
  const inOrder = isForward ? walked : walked.toReversed()
  const [first, last] = [inOrder[0]!, inOrder.at(-1)!]
  const kept = (bends: readonly Position[]) =>
    bends.map((position): Placed => ({ position, at: plane.toPlane(position) }))
  // Where nobody has walked, the line goes on as it did.
  const start = apart(first.at, from) > REACHES_M ? line.bends.slice(0, along(first).leg) : []
  const end = apart(last.at, to) > REACHES_M ? line.bends.slice(along(last).leg) : []
  const inner = [...kept(start), ...inOrder, ...kept(end)].filter(
    ({ at }) => apart(at, from) > AT_STATION_M && apart(at, to) > AT_STATION_M,
  )
  const stops = [from, ...inner.map(({ at }) => at), to]
  const legs = stops.slice(1).map((next, k): Leg => {
    const [x, y] = stops[k]!
    const { leg } = nearestOnPath([(x + next[0]) / 2, (y + next[1]) / 2], old)
    const { note: _, unknown: __, ...as } = line.legs[leg]!
    return as
  })
  return { bends: inner.map(({ position }): Position => position), legs }
}

interface Placed {
  readonly position: readonly [lonDeg: number, latDeg: number] | Position
  readonly at: PlanePoint
}

const apart = (a: PlanePoint, b: PlanePoint): number => Math.hypot(a[0] - b[0], a[1] - b[1])

interface OnPath {
  readonly leg: number
  /** From the start of that leg, m. */
  readonly alongM: number
}

const isBefore = (a: OnPath, b: OnPath): boolean => a.leg < b.leg || (a.leg === b.leg && a.alongM <= b.alongM)

/** The place of a path that lies nearest to a point. */
function nearestOnPath(at: PlanePoint, path: readonly PlanePoint[]): OnPath {
  let best: OnPath = { leg: 0, alongM: 0 }
  let leastM = Number.POSITIVE_INFINITY
  for (let leg = 0; leg < path.length - 1; leg++) {
    const [a, b] = [path[leg]!, path[leg + 1]!]
    const offM = offLineM(at, a, b)
    if (offM >= leastM) continue
    leastM = offM
    best = { leg, alongM: Math.sqrt(Math.max(0, apart(at, a) ** 2 - offM ** 2)) }
  }
  return best
}

/** A corner of the old way that lies farther off the new one than this part of it says nothing of where on it one is. Allowance. */
const NEAR_PART = 0.1

/**
 * Where places of a line's old way come to lie on its new one: metres of wire before, and now, growing. A corner lies where the new way
 * passes it; where it does not, wire is taken in proportion.
 */
function wirePairs(before: Plan, old: Line, after: Plan, led: Line, measure: Measure) {
  const [oldM, newM] = [measure(before, old), measure(after, led)]
  const pairs: (readonly [number, number])[] = [[0, 0]]
  for (const [i, bend] of old.bends.entries()) {
    const { groundM, offM } = nearestOnLine(after, newM, led, bend)
    const nowM = wireMAtGroundM(newM, groundM)
    const isPassed = offM < NEAR_PART * newM.groundM && nowM < newM.wireM
    if (isPassed && nowM > pairs.at(-1)![1]) pairs.push([wireMOnLeg(oldM, i + 1, 0), nowM])
  }
  return [...pairs, [oldM.wireM, newM.wireM]] as const
}

/**
 * Gives a line the slack that makes its wire as long as was really used, tails included, and adds a record of that which keeps the slack
 * before. Refused where that is less than its way, or more
 * slack than a leg may have.
 *
 * @param measured the line as it is
 */
export function setUsedWire(
  plan: Plan,
  id: LineId,
  measured: Pick<MeasuredLine, 'laidM' | 'wireM'>,
  wireM: number,
  by: By,
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
  const led = withLine(plan, { ...line, legs: held })
  const planned = { bends: line.bends, legs: line.legs }
  const wire = [
    [0, 0],
    [measured.wireM, wireM],
  ] as const
  return addRecord(led, { ...by, line: id, kind: 'as-laid', planned, wire })
}
