import type { LineId, StationId } from '../plan/id'
import type { Line, Plan } from '../plan/plan'
import type { Crossing } from '../terrain/crossings'
import { type PlaceOnLine, pointAtGroundM, pointAtMapM } from './along'
import type { MeasuredLine } from './measured'

/** Why a tag hangs where it does. */
export type TagReason = 'station' | 'test-point' | 'lay-changes' | 'crossing' | 'leaves-route' | 'interval'

/** A tag on a line, with the place where it is tied. */
export interface Tag extends PlaceOnLine {
  readonly line: LineId
  readonly reason: TagReason
  /** What it marks: a station's name, a road; for the tag list. */
  readonly note: string
}

/** A place to open the line for a test: a station where lines branch, or one on the line between. */
export interface TestPoint extends PlaceOnLine {
  readonly line: LineId
  readonly at: StationId | null
}

/** How far apart tags and test points are; a person can change each. */
export interface TaggingAllowances {
  /** Most distance along the ground between two test points, m: handbooks say "every few kilometres". */
  readonly testPointM: number
  /** Most distance between two tags, m. */
  readonly tagM: number
  /** A tag stands so far to either side of what is crossed, m. */
  readonly besideCrossingM: number
}

/** Allowances, from memory: no handbook read gives a figure. Mountain, desert and arctic country want less (SS0440, p. 1-31). */
export const DEFAULT_TAGGING: TaggingAllowances = { testPointM: 3000, tagM: 1000, besideCrossingM: 5 }

/** Two tags nearer than this are one, m. */
const SAME_PLACE_M = 2

/** Stations where three lines or more of one circuit meet: a fault can be told there to be on one of the branches. */
export function branchStations(plan: Plan): ReadonlySet<StationId> {
  const branches = new Set<StationId>()
  for (const circuit of plan.circuits.values()) {
    const ends = new Map<StationId, number>()
    for (const id of circuit.lines) {
      const line = plan.lines.get(id)
      for (const station of line ? [line.from, line.to] : []) ends.set(station, (ends.get(station) ?? 0) + 1)
    }
    for (const [station, count] of ends) if (count >= 3) branches.add(station)
  }
  return branches
}

/**
 * Test points of a line: its ends where they are branches, and between its ends so many, evenly spaced along the ground, that no two
 * neighbours are farther apart than `testPointM`.
 *
 * Branches and at most every few kilometres: common practice of field manuals.
 */
export function testPointsOf(
  plan: Plan,
  line: Line,
  measured: MeasuredLine,
  branches: ReadonlySet<StationId> = branchStations(plan),
  { testPointM }: TaggingAllowances = DEFAULT_TAGGING,
): readonly TestPoint[] {
  const stretches = Math.max(1, Math.ceil(measured.groundM / testPointM - 1e-9))
  const points: TestPoint[] = []
  for (let k = 0; k <= stretches; k++) {
    const at = k === 0 ? line.from : k === stretches ? line.to : null
    if (at !== null && !branches.has(at)) continue
    const place = pointAtGroundM(plan, measured, line, (measured.groundM * k) / stretches)
    points.push({ ...place, line: line.id, at })
  }
  return points
}

/**
 * Where a line's tags are tied, in order along the ground.
 *
 * At its stations and test points, where the lay changes, on both sides of each crossing, where it leaves a station that several
 * lines share, and so often besides that no two are farther apart than `tagM`.
 *
 * Source: US Army subcourse SS0444, p. 2-9, par. 37 (places) and p. 2-4 (both ends of a railway crossing). The distances are
 * allowances.
 *
 * @param crossings of this line
 */
export function tagsOf(
  plan: Plan,
  line: Line,
  measured: MeasuredLine,
  crossings: readonly Crossing[] = [],
  branches: ReadonlySet<StationId> = branchStations(plan),
  allowances: TaggingAllowances = DEFAULT_TAGGING,
): readonly Tag[] {
  const wanted: { readonly groundM: number; readonly reason: TagReason; readonly note: string }[] = []
  const nameOf = (id: StationId) => plan.stations.get(id)?.name || id
  const sharers = (id: StationId) =>
    [...plan.lines.values()].filter((one) => one.from === id || one.to === id)

  for (const [station, groundM, leavesM] of [
    [line.from, 0, allowances.besideCrossingM],
    [line.to, measured.groundM, measured.groundM - allowances.besideCrossingM],
  ] as const) {
    wanted.push({ groundM, reason: 'station', note: nameOf(station) })
    if (sharers(station).length > 1) {
      wanted.push({ groundM: leavesM, reason: 'leaves-route', note: `off the lines at ${nameOf(station)}` })
    }
  }
  for (const point of testPointsOf(plan, line, measured, branches, allowances)) {
    wanted.push({ groundM: point.groundM, reason: 'test-point', note: point.at ? nameOf(point.at) : '' })
  }
  let runM = 0
  for (const [i, leg] of measured.legs.entries()) {
    const before = measured.legs[i - 1]
    if (before && before.lay !== leg.lay) {
      wanted.push({ groundM: runM, reason: 'lay-changes', note: `${before.lay} to ${leg.lay}` })
    }
    runM += leg.groundM
  }
  for (const crossing of crossings) {
    if (crossing.kind === 'keep-out') continue
    const note = crossing.name || crossing.kind
    const near = crossing.distanceM - allowances.besideCrossingM
    const far = crossing.distanceM + crossing.insideM + allowances.besideCrossingM
    for (const mapM of [near, far]) {
      wanted.push({ groundM: pointAtMapM(plan, measured, line, mapM).groundM, reason: 'crossing', note })
    }
  }

  const inOrder = wanted
    .map((tag) => ({ ...tag, groundM: Math.min(measured.groundM, Math.max(0, tag.groundM)) }))
    .sort((a, b) => a.groundM - b.groundM)
  const kept: typeof inOrder = []
  for (const tag of inOrder) {
    const last = kept.at(-1)
    if (last && tag.groundM - last.groundM < SAME_PLACE_M) continue
    const gapM = last ? tag.groundM - last.groundM : 0
    const between = Math.ceil(gapM / allowances.tagM - 1e-9) - 1
    for (let k = 1; k <= between; k++) {
      kept.push({ groundM: last!.groundM + (gapM * k) / (between + 1), reason: 'interval', note: '' })
    }
    kept.push(tag)
  }
  return kept.map(({ groundM, reason, note }) => ({
    ...pointAtGroundM(plan, measured, line, groundM),
    line: line.id,
    reason,
    note,
  }))
}
