import { RANK } from '../budget/verdict'
import type { CircuitId } from '../plan/id'
import type { Circuit, Plan } from '../plan/plan'
import { circuitNetwork } from './circuit-network'
import { isAmiss } from './is-amiss'
import { laidCatalog, learnedOf } from './learned-of'
import { possibleChanges } from './possible-changes'
import { chooseRemedies } from './remedy-ranking'
import { type Lengths, type Standing, sparesOthers, standing, type Trial, tryAll } from './remedy-trials'
import type { Remedy } from './report'
import { weakPlaces } from './weak-places'

/** Single changes from which pairs are made when none is enough alone. */
const PAIRED = 24
/** What a search may cost: trials × (lines + sets²), which is what a trial costs. Some seconds on a laptop at the most. */
const WORK = 100_000
/** On a large circuit so many trials are made, as long as they cost no more in all; on one that is larger still fewer, or none. */
const FEWEST_TRIALS = 60
const MOST_WORK = 150_000

/** How many trials a circuit is worth. */
export function mostTrials({ lines, sets }: Circuit): number {
  const cost = lines.length + sets.size ** 2
  return Math.floor(Math.max(Math.min(FEWEST_TRIALS, MOST_WORK / cost), WORK / cost))
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
  const most = mostTrials(plan.circuits.get(id)!)
  if (most === 0) return []
  const learned = learnedOf(plan, measured)
  const before = standing(plan, [id], measured, learned)
  if (!isAmiss({ verdict: before.verdict, worst: { verdict: before.worst } })) return []
  const isGood = (trial: Trial) => mends(before, trial) && sparesOthers(plan, measured, id, trial, learned)

  const model = circuitNetwork(plan, plan.circuits.get(id)!, laidCatalog(plan, measured, learned), measured)
  const changes = possibleChanges(plan, id, weakPlaces(model, before.checks)).slice(0, most)
  const singles = tryAll(
    plan,
    id,
    changes.map((change) => [change]),
    measured,
    learned,
  )
  let good = singles.filter(isGood)
  if (good.length === 0) {
    const promising = singles
      .filter((trial) => trial.today > before.today + 1e-9 || trial.worstNepers > before.worstNepers + 1e-9)
      .sort((a, b) => b.today + b.worstNepers - (a.today + a.worstNepers))
      .slice(0, Math.min(PAIRED, Math.floor(Math.sqrt(2 * most))))
      .map((trial) => trial.changes[0]!)
    const pairs = promising.flatMap((first, k) => promising.slice(k + 1).map((second) => [first, second]))
    good = tryAll(plan, id, pairs, measured, learned).filter(isGood)
  }
  return chooseRemedies(plan, good, measured)
}

/** A remedy makes the circuit work today; where it did already, it must hold in the worst weather; and it makes nothing worse. */
function mends(before: Standing, after: Standing): boolean {
  if (after.verdict !== 'works' || RANK[after.worst] < RANK[before.worst]) return false
  return before.verdict !== 'works' || after.worst !== 'fails'
}
