import { circuitRows } from '../budget/circuit-rows'
import { completenessOf } from '../budget/completeness'
import { conditionsOf } from '../budget/conditions'
import { worstCorner } from '../budget/envelope'
import type { Check, Verdict } from '../budget/rows'
import { leastMargin, RANK, verdictOf } from '../budget/verdict'
import { BUILT_IN } from '../catalog/built-in'
import { mergeCatalogs } from '../catalog/catalog'
import { planSpools } from '../materials/plan-spools'
import type { MeasuredLine } from '../measure/measured'
import type { CircuitId, LineId } from '../plan/id'
import type { Plan } from '../plan/plan'
import { circuitNetwork } from './circuit-network'
import { isAmiss } from './is-amiss'
import { possibleChanges } from './possible-changes'
import { applyChanges, type Change } from './remedy-changes'
import type { Remedy } from './report'
import { weakPlaces } from './weak-places'

/** How many remedies are listed, and how many of one kind. */
const LISTED = 6
const LISTED_OF_A_KIND = 2
/** Single changes from which pairs are made when none is enough alone. */
const PAIRED = 24
/** What a search may cost: trials × (lines + sets²), which is what a trial costs. Some seconds on a laptop at the most. */
const WORK = 100_000
/** On a large circuit so many trials are made, as long as they cost no more in all; on one that is larger still fewer, or none. */
const FEWEST_TRIALS = 60
const MOST_WORK = 150_000

interface Standing {
  readonly verdict: Verdict
  readonly worst: Verdict
  /** Least to spare over all checks, in nepers: today, and in the worst corner. */
  readonly today: number
  readonly worstNepers: number
  /** The tightest check today and in the worst corner, as far as there is one. */
  readonly checks: readonly Check[]
}

type Lengths = ReadonlyMap<LineId, MeasuredLine>

interface Trial extends Standing {
  readonly changes: readonly Change[]
  readonly plan: Plan
  readonly measured: Lengths
}

/**
 * What would mend a circuit: single changes that a crew can make are tried with the engine, then pairs of the most promising where none is
 * enough. On a small circuit every change is tried; on a large one those at its weakest lines, and as many as the work allows. Only
 * changes after which the circuit works, and no circuit beside it is worse, are listed: first those that also hold in the worst weather,
 * then the lightest. Empty where nothing is amiss, and on a circuit of more than some 380 sets, where each trial would take seconds.
 *
 * @param measured the plan's lines, measured: no change moves a line
 */
export function remediesFor(plan: Plan, id: CircuitId, measured: Lengths): Remedy[] {
  const { lines, sets } = plan.circuits.get(id)!
  const cost = lines.length + sets.size ** 2
  const most = Math.floor(Math.max(Math.min(FEWEST_TRIALS, MOST_WORK / cost), WORK / cost))
  if (most === 0) return []
  const before = standing(plan, [id], measured)
  if (!isAmiss({ verdict: before.verdict, worst: { verdict: before.worst } })) return []
  const isGood = (trial: Trial) => mends(before, trial) && sparesOthers(plan, measured, id, trial)

  const model = circuitNetwork(plan, plan.circuits.get(id)!, mergeCatalogs(BUILT_IN, plan.catalog), measured)
  const changes = possibleChanges(plan, id, weakPlaces(model, before.checks)).slice(0, most)
  const singles = tryAll(
    plan,
    id,
    changes.map((change) => [change]),
    measured,
  )
  let good = singles.filter(isGood)
  if (good.length === 0) {
    const promising = singles
      .filter((trial) => trial.today > before.today + 1e-9 || trial.worstNepers > before.worstNepers + 1e-9)
      .sort((a, b) => b.today + b.worstNepers - (a.today + a.worstNepers))
      .slice(0, Math.min(PAIRED, Math.floor(Math.sqrt(2 * most))))
      .map((trial) => trial.changes[0]!)
    const pairs = promising.flatMap((first, k) => promising.slice(k + 1).map((second) => [first, second]))
    good = tryAll(plan, id, pairs, measured).filter(isGood)
  }
  return choose(plan, good, measured)
}

/** A remedy makes the circuit work today; where it did already, it must hold in the worst weather; and it makes nothing worse. */
function mends(before: Standing, after: Standing): boolean {
  if (after.verdict !== 'works' || RANK[after.worst] < RANK[before.worst]) return false
  return before.verdict !== 'works' || after.worst !== 'fails'
}

/** Whether every other circuit on the lines that a trial changes stands as well as before. */
function sparesOthers(plan: Plan, measured: Lengths, id: CircuitId, trial: Trial): boolean {
  const touched = (line: LineId) => plan.lines.get(line) !== trial.plan.lines.get(line)
  return [...plan.circuits.values()].every((other) => {
    if (other.id === id || !other.lines.some(touched)) return true
    const before = standing(plan, [other.id], measured)
    const after = standing(trial.plan, [other.id], trial.measured)
    return RANK[after.verdict] >= RANK[before.verdict] && RANK[after.worst] >= RANK[before.worst]
  })
}

function tryAll(
  plan: Plan,
  id: CircuitId,
  candidates: readonly (readonly Change[])[],
  measured: Lengths,
): Trial[] {
  return candidates.flatMap((changes) => {
    const changed = applyChanges(plan, id, changes)
    if (changed === plan) return []
    const lengths = lengthsOf(changed, plan, measured)
    const added = [...changed.circuits.keys()].filter((other) => !plan.circuits.has(other))
    return [{ changes, plan: changed, measured: lengths, ...standing(changed, [id, ...added], lengths) }]
  })
}

/** Lengths for a changed plan: a second run of wire beside a line is as long as the first, whose legs it shares. */
function lengthsOf(changed: Plan, before: Plan, measured: Lengths): Lengths {
  if (changed.lines.size === before.lines.size) return measured
  const byLegs = new Map([...before.lines.values()].map((line) => [line.legs, measured.get(line.id)!]))
  const added = [...changed.lines.values()].filter(({ id }) => !measured.has(id))
  return new Map([...measured, ...added.map(({ id, legs }) => [id, { ...byLegs.get(legs)!, id }] as const)])
}

/** How one circuit stands, or the worst of several that it was split into. */
function standing(plan: Plan, ids: readonly CircuitId[], measured: Lengths): Standing {
  const catalog = mergeCatalogs(BUILT_IN, plan.catalog)
  const now = conditionsOf(plan.weather, plan.wireTempC)
  const each = ids.map((id): Standing => {
    const model = circuitNetwork(plan, plan.circuits.get(id)!, catalog, measured)
    const { missing } = completenessOf(model, now)
    const rows = circuitRows(model, now)
    const least = leastMargin(rows)
    const worst = worstCorner(model, now, missing)
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

interface Burden {
  readonly metres: number
  readonly kg: number
}

/** All the wire of a plan: what a remedy adds is told from this. */
function wireOf(plan: Plan, measured: Lengths): Burden {
  const { wires } = mergeCatalogs(BUILT_IN, plan.catalog)
  let metres = 0
  let kg = 0
  for (const line of plan.lines.values()) {
    const pairsM = measured.get(line.id)!.wireM * line.pairs
    metres += pairsM
    kg += (pairsM / 1000) * wires.get(line.wire)!.kgPerKm
  }
  return { metres, kg }
}

/** Kilograms more to carry, to the tenth; less is as good as none. */
const heavier = (wire: Burden, now: Burden): number => Math.max(0, Math.round((wire.kg - now.kg) * 10) / 10)

/** From what is done in a minute at one station to what takes a second crew: common practice. */
const EFFORT: readonly Change['kind'][] = [
  'more-cells',
  'move-supply',
  'supply',
  'board',
  'more-rods',
  'sets',
  'wire',
  'pair-for-earth',
  'second-pair',
  'split',
]
const effort = ({ changes }: Trial): number =>
  changes.reduce((sum, change) => sum + EFFORT.indexOf(change.kind) + 1 + (extraCells(change) - 1) / 10, 0)
const extraCells = (change: Change): number => (change.kind === 'more-cells' ? change.cells : 1)

const spoolCount = (plan: Plan, measured: Lengths): number =>
  planSpools(plan, mergeCatalogs(BUILT_IN, plan.catalog), measured).spools.reduce(
    (sum, { carry }) => sum + carry.reduce((count, spool) => count + spool.count, 0),
    0,
  )

/** A thousandfold is as good as without end, which no JSON can hold; the reach of a circuit ends there too. */
const MOST_SPARE_NEPERS = Math.log(1000)

/** What a margin in nepers leaves over, in per cent of the least: 100·(eⁿ − 1), from −100 to 99,900; −100 where it is not a number. */
export const sparePct = (nepers: number): number =>
  Number.isNaN(nepers) ? -100 : (Math.exp(Math.min(nepers, MOST_SPARE_NEPERS)) - 1) * 100

function choose(plan: Plan, good: readonly Trial[], measured: Lengths): Remedy[] {
  const now = wireOf(plan, measured)
  const ranked = good
    .map((trial) => ({ trial, wire: wireOf(trial.plan, trial.measured) }))
    .sort(
      (a, b) =>
        RANK[b.trial.worst] - RANK[a.trial.worst] ||
        heavier(a.wire, now) - heavier(b.wire, now) ||
        effort(a.trial) - effort(b.trial) ||
        b.trial.worstNepers - a.trial.worstNepers,
    )
  const listed: typeof ranked = []
  const ofKind = new Map<string, number>()
  for (const each of ranked) {
    const kind = each.trial.changes.map((change) => change.kind).join()
    const seen = ofKind.get(kind) ?? 0
    if (seen >= LISTED_OF_A_KIND) continue
    ofKind.set(kind, seen + 1)
    listed.push(each)
    if (listed.length === LISTED) break
  }
  const spoolsNow = listed.length > 0 ? spoolCount(plan, measured) : 0
  return listed.map(({ trial, wire }) => ({
    changes: trial.changes,
    verdict: trial.verdict,
    worst: trial.worst,
    marginPct: sparePct(trial.today),
    worstMarginPct: sparePct(trial.worstNepers),
    extraM: wire.metres - now.metres,
    extraKg: wire.kg - now.kg,
    extraSpools: spoolCount(trial.plan, trial.measured) - spoolsNow,
  }))
}
