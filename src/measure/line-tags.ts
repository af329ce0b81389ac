import type { Position } from '../geo/position'
import { type Crossing, crossingsOf } from '../hazard/crossings'
import { memoryOfEach, remembering } from '../memo'
import type { StationId } from '../plan/id'
import { type LineEnds, lineEndsOf } from '../plan/line-row'
import type { HazardKind, Lay, Line, Plan } from '../plan/plan'
import { WORK, workOf } from '../plan/work'
import type { MeasuredLine } from './measured'
import { pointAtGroundM, pointAtMapM, wireMAtGroundM } from './place-on-line'

/** Why a tag hangs where it does. */
export type TagReason =
  | { readonly code: 'end'; readonly station: StationId; readonly branches: boolean }
  | { readonly code: 'lay-changes'; readonly from: Lay; readonly to: Lay }
  | { readonly code: 'crossing'; readonly hazard: HazardKind; readonly name: string }
  | { readonly code: 'test-point' }
  | { readonly code: 'on-the-way' }

/** A tag on a line: where it hangs, and why. */
export interface LineTag {
  /** Counted from the line's `from`, from 1. */
  readonly number: number
  readonly groundM: number
  readonly wireM: number
  readonly legIndex: number
  readonly position: Position
  /** The first one is the most telling. */
  readonly reasons: readonly [TagReason, ...TagReason[]]
  /** True where the pair can be opened and measured: the line's ends, and between them so many that none is far from the next. */
  readonly isTestPoint: boolean
}

/** How far apart tags and test points stand; a person can change each. */
export interface TaggingAllowances {
  /** Longest stretch of ground without a test point, m. */
  readonly testEveryM: number
  /** Longest stretch of ground without a tag, m. */
  readonly tagEveryM: number
  /** From a crossing to the tag on either side of it, m. */
  readonly besideCrossingM: number
}

/** Where these allowances come from. */
export const TAGGING_SOURCE =
  'allowance, common practice; mountain, desert and arctic country want more of them (US Army subcourse SS0440, p. 1-31)'

export const DEFAULT_TAGGING: TaggingAllowances = {
  testEveryM: WORK.testEveryM.usual,
  tagEveryM: WORK.tagEveryM.usual,
  besideCrossingM: 10,
}

/** What a plan says of its tags. */
const taggingOf = (plan: Plan): TaggingAllowances => ({
  testEveryM: workOf(plan, 'testEveryM'),
  tagEveryM: workOf(plan, 'tagEveryM'),
  besideCrossingM: DEFAULT_TAGGING.besideCrossingM,
})

/** Tags closer than this are one tag, m of ground: a hand reaches both. */
const SAME_PLACE_M = 15

interface Reason {
  readonly groundM: number
  readonly why: TagReason
  readonly isTestPoint: boolean
}

/** Stations where three lines or more of one circuit meet: opened there, a fault is told to be on one of the branches. */
export const branchStations = (plan: Plan): ReadonlySet<StationId> =>
  findBranches(lineEndsOf(plan), plan.circuits)

const findBranches = remembering((lines: LineEnds, circuits: Plan['circuits']) => {
  const branches = new Set<StationId>()
  for (const circuit of circuits.values()) {
    // A circuit of so few lines cannot branch.
    if (circuit.lines.length < 3) continue
    const ends = new Map<StationId, number>()
    for (const id of circuit.lines) {
      const line = lines.get(id)
      if (!line) continue
      ends.set(line.from, (ends.get(line.from) ?? 0) + 1)
      ends.set(line.to, (ends.get(line.to) ?? 0) + 1)
    }
    for (const [station, count] of ends) if (count >= 3) branches.add(station)
  }
  return branches
})

/** Equal stretches of at most `everyM` between two places: where one ends and the next begins. */
function between(fromM: number, toM: number, everyM: number): readonly number[] {
  const stretches = Math.ceil((toM - fromM) / everyM - 1e-9)
  return Array.from(
    { length: Math.max(0, stretches - 1) },
    (_, i) => fromM + ((toM - fromM) * (i + 1)) / stretches,
  )
}

const atEnd = (plan: Plan, station: StationId): TagReason => ({
  code: 'end',
  station,
  branches: branchStations(plan).has(station),
})

/** Where the handbook wants a tag, one reason each, along the whole line. */
function reasonsFor(
  plan: Plan,
  measured: MeasuredLine,
  line: Line,
  crossings: readonly Crossing[],
  allowances: TaggingAllowances,
): readonly Reason[] {
  const lastM = measured.groundM
  const ends: readonly Reason[] = [
    { groundM: 0, why: atEnd(plan, line.from), isTestPoint: true },
    { groundM: lastM, why: atEnd(plan, line.to), isTestPoint: true },
  ]
  let runM = 0
  const changes = measured.legs.slice(0, -1).flatMap((leg, i): Reason[] => {
    runM += leg.groundM
    const next = measured.legs[i + 1]!.lay
    const why: TagReason = { code: 'lay-changes', from: leg.lay, to: next }
    return next === leg.lay ? [] : [{ groundM: runM, why, isTestPoint: false }]
  })
  const beside = crossings.flatMap(({ kind, name, distanceM, insideM }): Reason[] => {
    const why: TagReason = { code: 'crossing', hazard: kind, name }
    const sides = [distanceM - allowances.besideCrossingM, distanceM + insideM + allowances.besideCrossingM]
    return sides.map((mapM) => ({
      groundM: pointAtMapM(plan, measured, line, mapM).groundM,
      why,
      isTestPoint: false,
    }))
  })
  const tests = between(0, lastM, allowances.testEveryM).map(
    (groundM): Reason => ({ groundM, why: { code: 'test-point' }, isTestPoint: true }),
  )
  return [...ends, ...changes, ...beside, ...tests]
}

/** Reasons whose tags would hang within reach of each other, together, in order along the line. */
function gathered(reasons: readonly Reason[]): readonly (readonly Reason[])[] {
  const groups: Reason[][] = []
  for (const reason of reasons.toSorted((a, b) => a.groundM - b.groundM)) {
    const last = groups.at(-1)
    if (last && reason.groundM - last[0]!.groundM < SAME_PLACE_M) last.push(reason)
    else groups.push([reason])
  }
  return groups
}

/** Each reason once: two roads of no name within reach of each other are one. */
const distinct = (reasons: readonly TagReason[]): readonly [TagReason, ...TagReason[]] => {
  const [first, ...others] = new Map(reasons.map((why) => [JSON.stringify(why), why])).values()
  return [first!, ...others]
}

/** The tag hangs at the test point where there is one: an end stays at its end. */
const placeOf = (group: readonly Reason[]): Reason =>
  group.find(({ isTestPoint }) => isTestPoint) ?? group[0]!

const remembered = memoryOfEach<MeasuredLine, readonly LineTag[]>()

/**
 * The tags of a line from `from` to `to`: at its ends and test points, where the lay changes, on both sides of each crossing, and so
 * often besides that none is farther from the next than `tagEveryM`.
 *
 * Source: US Army subcourse SS0444, p. 2-9, par. 37 (where to tag) and p. 2-4 (both ends of a railway crossing).
 *
 * @param allowances by default what the plan says
 */
export function lineTags(
  plan: Plan,
  measured: MeasuredLine,
  line: Line,
  crossings: readonly Crossing[] = crossingsOf(plan, line),
  allowances: TaggingAllowances = taggingOf(plan),
): readonly LineTag[] {
  const from = [
    line,
    crossings,
    branchStations(plan).has(line.from),
    branchStations(plan).has(line.to),
    ...Object.values(allowances),
  ]
  return remembered(measured, from, () => placeTags(plan, measured, line, crossings, allowances))
}

function placeTags(
  plan: Plan,
  measured: MeasuredLine,
  line: Line,
  crossings: readonly Crossing[],
  allowances: TaggingAllowances,
): readonly LineTag[] {
  const asked = reasonsFor(plan, measured, line, crossings, allowances)
  const places = gathered(asked).map((group) => placeOf(group).groundM)
  const extra = places
    .slice(1)
    .flatMap((groundM, i) =>
      between(places[i]!, groundM, allowances.tagEveryM).map(
        (placeM): Reason => ({ groundM: placeM, why: { code: 'on-the-way' }, isTestPoint: false }),
      ),
    )
  return gathered([...asked, ...extra]).map((group, i) => {
    const { groundM, isTestPoint } = placeOf(group)
    const { position, legIndex } = pointAtGroundM(plan, measured, line, groundM)
    const telling = group.toSorted((a, b) => Number(b.isTestPoint) - Number(a.isTestPoint))
    return {
      number: i + 1,
      groundM,
      wireM: wireMAtGroundM(measured, groundM),
      legIndex,
      position,
      reasons: distinct(telling.map(({ why }) => why)),
      isTestPoint,
    }
  })
}
