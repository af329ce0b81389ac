import type { Verdict } from '../budget/rows'
import type { Plan } from '../plan/plan'
import { reportPlan } from '../report/report-plan'
import { canonical } from './canonical'
import { mendPlan } from './mend-plan'
import { mergeRecords } from './merge-records'
import { planFromTree, planTree } from './plan-tree'
import { type Conflict, type Met, mergeTrees, type Tree } from './registers'
import { tellApart } from './same-id'

export interface MergedPlans {
  readonly plan: Plan
  readonly conflicts: readonly Conflict[]
  /** What would have contradicted itself and was mended, and what stayed though one hand took it out; sentences. */
  readonly mended: readonly string[]
}

/**
 * Two plans that grew from one, as one: property by property, a route as one property. What one hand changed and the other left
 * alone is kept; what both set differently is a conflict, of which the same side is kept whoever is called mine.
 */
export function mergePlans(base: Plan, mine: Plan, theirs: Plan): MergedPlans {
  const hands = tellApart(base, mine, theirs)
  const met: Met = { conflicts: [], stayed: [] }
  const tree = mergeTrees(planTree(base), planTree(hands.mine), planTree(hands.theirs), '', met) as Tree
  const ordered = [hands.mine, hands.theirs].sort((a, b) => (canonical(a) < canonical(b) ? 1 : -1))
  const field = mergeRecords(base, hands.mine, hands.theirs)
  const whole = { ...planFromTree(tree), ...(field.length > 0 && { field }) }
  const { plan, mended } = mendPlan(whole, [...ordered, base])
  const stayed = met.stayed.map(
    (where) => `${nameAt(plan, where)} was taken out by one and changed by the other; it stays.`,
  )
  return { plan, conflicts: met.conflicts, mended: [...stayed, ...mended] }
}

/** What a person calls the thing at a place in the tree: its name, else the place. */
function nameAt(plan: Plan, where: string): string {
  const [kind, id = ''] = where.split('/')
  const things = kind === 'stations' || kind === 'hazards' || kind === 'circuits' ? plan[kind] : undefined
  return (things as ReadonlyMap<string, { readonly name: string }> | undefined)?.get(id)?.name || where
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
