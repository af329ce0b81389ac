import type { Verdict } from '../budget/rows'
import type { Plan } from '../plan/plan'
import { withPictures } from '../plan/record-pictures'
import { reportPlan } from '../report/report-plan'
import { type Edit, standing } from './edit'
import { Journal } from './journal'
import { stateOf, takeState } from './journal-state'
import { placeOf, whereOf } from './keys'
import { shownValue } from './members'
import { tellApart } from './same-id'

/** One thing that both hands set differently. */
export interface Conflict {
  /** Names from the top down, `lines/l1/wire`. */
  readonly where: string
  readonly base: unknown
  readonly mine: unknown
  readonly theirs: unknown
  readonly kept: unknown
}

export interface MergedPlans {
  readonly plan: Plan
  readonly conflicts: readonly Conflict[]
  /** What would have contradicted itself and was mended, and what stayed though one hand took it out; sentences. */
  readonly mended: readonly string[]
}

/** The journal of two plans that grew from one, as two hands who wrote at the same time, with what the other one wrote. */
export function mergedJournal(
  base: Plan,
  mine: Plan,
  theirs: Plan,
): { readonly journal: Journal; readonly came: readonly Edit[] } {
  const hands = tellApart(base, withPictures(mine, theirs), withPictures(theirs, mine))
  const [own, other] = [new Journal('', base), new Journal('', base)]
  own.write(MINE, base, hands.mine, 1)
  const came = other.write(THEIRS, base, hands.theirs, 1)
  own.take(came)
  return { journal: own, came }
}

/**
 * Two plans that grew from one, as one: property by property, a route as one property. What one hand changed and the other left
 * alone is kept; what both set differently is a conflict, of which the same side is kept whoever is called mine.
 */
export function mergePlans(base: Plan, mine: Plan, theirs: Plan): MergedPlans {
  const { journal } = mergedJournal(base, mine, theirs)
  return { ...journal.mended(), conflicts: conflictsOf(journal, base) }
}

const [MINE, THEIRS] = ['mine', 'theirs'] as const

function conflictsOf(journal: Journal, base: Plan): readonly Conflict[] {
  const before = new Journal('', base).things
  return journal.torn().map(({ key, edits }) => {
    const by = (hand: string) => shown(edits.find((edit) => edit.hand === hand))
    return {
      where: whereOf(key),
      base: shown(before.edits(key)[0]),
      mine: by(MINE),
      theirs: by(THEIRS),
      kept: shown(edits[0]),
    }
  })
}

const shown = (edit: Edit | undefined): unknown =>
  (edit && shownValue(placeOf(edit.key)!.member, edit.value)) ?? null

/** Two journals of one plan as one: `mine` takes in what is in `theirs`. A sentence where they are none of one plan. */
export function mergeJournals(base: Plan, mine: Journal, theirs: Journal): MergedPlans | string {
  const before = new Journal('', base).things
  const own = (key: string) => shown(standing(mine.things.edits(key)))
  const ours = new Map([...theirs.things.edited()].map(([key]) => [key, own(key)]))
  const taken = takeState(mine, stateOf(theirs))
  if (typeof taken === 'string') return taken
  const conflicts = mine.torn().map(({ key, edits }) => ({
    where: whereOf(key),
    base: shown(before.edits(key)[0]),
    mine: ours.get(key) ?? null,
    theirs: shown(standing(theirs.things.edits(key))),
    kept: shown(edits[0]),
  }))
  return { ...mine.mended(), conflicts }
}

/** Verdicts of a circuit in each hand's plan and in the merged one; null where the plan has no such circuit. */
export interface ChangedVerdict {
  readonly circuit: string
  readonly mine: Verdict | null
  readonly theirs: Verdict | null
  readonly merged: Verdict | null
}

/** The circuits whose verdicts are not the same in all three plans. */
export function changedVerdicts(mine: Plan, theirs: Plan, merged: Plan): readonly ChangedVerdict[] {
  const [m, t, both] = [mine, theirs, merged].map(
    (plan) => new Map<string, Verdict>(reportPlan(plan).circuits.map(({ id, verdict }) => [id, verdict])),
  )
  const ids = new Set([...both!.keys(), ...[...m!.keys(), ...t!.keys()].sort()])
  return [...ids]
    .map((circuit) => ({
      circuit,
      mine: m!.get(circuit) ?? null,
      theirs: t!.get(circuit) ?? null,
      merged: both!.get(circuit) ?? null,
    }))
    .filter((each) => each.mine !== each.merged || each.theirs !== each.merged)
}
