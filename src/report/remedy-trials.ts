import { circuitRows } from '../budget/circuit-rows'
import { completenessOf } from '../budget/completeness'
import { conditionsOf } from '../budget/conditions'
import { worstCorner } from '../budget/envelope'
import type { Check, Verdict } from '../budget/rows'
import { leastMargin, RANK, verdictOf } from '../budget/verdict'
import type { Learned } from '../field/learned-figures'
import type { MeasuredLine } from '../measure/measured'
import type { CircuitId, LineId } from '../plan/id'
import type { Plan } from '../plan/plan'
import { circuitNetwork } from './circuit-network'
import { laidCatalog } from './learned-of'
import { applyChanges, type Change } from './remedy-changes'

/** How a circuit stands, as far as remedies are weighed by it. */
export interface Standing {
  readonly verdict: Verdict
  readonly worst: Verdict
  /** Least to spare over all checks, in nepers: today, and in the worst corner. */
  readonly today: number
  readonly worstNepers: number
  /** The tightest check today and in the worst corner, as far as there is one. */
  readonly checks: readonly Check[]
}

export type Lengths = ReadonlyMap<LineId, MeasuredLine>

/** A plan with changes made, and how its circuit then stands. */
export interface Trial extends Standing {
  readonly changes: readonly Change[]
  readonly plan: Plan
  readonly measured: Lengths
}

/** Whether every other circuit on the lines that a trial changes stands as well as before. */
export function sparesOthers(
  plan: Plan,
  measured: Lengths,
  id: CircuitId,
  trial: Trial,
  learned: Learned,
): boolean {
  const touched = (line: LineId) => plan.lines.get(line) !== trial.plan.lines.get(line)
  return [...plan.circuits.values()].every((other) => {
    if (other.id === id || !other.lines.some(touched)) return true
    const before = standing(plan, [other.id], measured, learned)
    const after = standing(trial.plan, [other.id], trial.measured, learned)
    return RANK[after.verdict] >= RANK[before.verdict] && RANK[after.worst] >= RANK[before.worst]
  })
}

/** A circuit with each of several lists of changes made, as it then stands; nothing for those that change nothing. */
export function tryAll(
  plan: Plan,
  id: CircuitId,
  candidates: readonly (readonly Change[])[],
  measured: Lengths,
  learned: Learned,
): Trial[] {
  return candidates.flatMap((changes) => {
    const changed = applyChanges(plan, id, changes)
    if (changed === plan) return []
    const lengths = lengthsOf(changed, plan, measured)
    const added = [...changed.circuits.keys()].filter((other) => !plan.circuits.has(other))
    return [
      { changes, plan: changed, measured: lengths, ...standing(changed, [id, ...added], lengths, learned) },
    ]
  })
}

/** Lengths for a changed plan: a second run of wire beside a line is as long as the first, whose legs it shares. */
export function lengthsOf(changed: Plan, before: Plan, measured: Lengths): Lengths {
  if (changed.lines.size === before.lines.size) return measured
  const byLegs = new Map([...before.lines.values()].map((line) => [line.legs, measured.get(line.id)!]))
  const added = [...changed.lines.values()].filter(({ id }) => !measured.has(id))
  return new Map([...measured, ...added.map(({ id, legs }) => [id, { ...byLegs.get(legs)!, id }] as const)])
}

/**
 * How one circuit stands, or the worst of several that it was split into.
 *
 * @param learned what was read of the wire that lies there: a trial that lays other wire teaches nothing
 */
export function standing(
  plan: Plan,
  ids: readonly CircuitId[],
  measured: Lengths,
  learned: Learned,
): Standing {
  const catalog = laidCatalog(plan, measured, learned)
  const now = conditionsOf(plan.weather, plan.wireTempC)
  const each = ids.map((id): Standing => {
    const model = circuitNetwork(plan, plan.circuits.get(id)!, catalog, measured)
    const { missing } = completenessOf(model, now)
    const rows = circuitRows(model, now)
    const least = leastMargin(rows)
    const worst = worstCorner(model, now, missing, rows)
    return {
      verdict: verdictOf(rows, missing),
      worst: worst.verdict,
      today: least?.nepers ?? 0,
      worstNepers: worst.least?.nepers ?? 0,
      checks: [least, worst.least].flatMap((margin) => (margin ? [margin.check] : [])),
    }
  })
  return each.reduce((a, b) => ({
    verdict: RANK[a.verdict] <= RANK[b.verdict] ? a.verdict : b.verdict,
    worst: RANK[a.worst] <= RANK[b.worst] ? a.worst : b.worst,
    today: Math.min(a.today, b.today),
    worstNepers: Math.min(a.worstNepers, b.worstNepers),
    checks: [...a.checks, ...b.checks],
  }))
}
