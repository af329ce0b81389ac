import { RANK } from '../budget/verdict'
import { BUILT_IN } from '../catalog/built-in'
import { mergeCatalogs } from '../catalog/catalog'
import { planSpools } from '../materials/plan-spools'
import type { Plan } from '../plan/plan'
import type { Change } from './remedy-changes'
import type { Lengths, Trial } from './remedy-trials'
import type { Remedy } from './report'

/** How many remedies are listed, and how many of one kind. */
const LISTED = 6
const LISTED_OF_A_KIND = 2

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

/** Of all that mends, what is listed: first what also holds in the worst weather, then the lightest, then the least work. */
export function chooseRemedies(plan: Plan, good: readonly Trial[], measured: Lengths): Remedy[] {
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
