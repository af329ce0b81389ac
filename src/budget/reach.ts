import type { CircuitModel } from './circuit-model'
import { circuitRows } from './circuit-rows'
import type { Conditions } from './conditions'
import type { Check, CircuitRows } from './rows'
import { leastMargin } from './verdict'

export const FURTHEST = 1000
/** Relative width at which the search stops. */
const CLOSE = 0.001
/** A factor below this is as good as no wire. */
const NEAREST = 1e-6

export interface ReachResult {
  /** Factor on every line's wire up to which no check fails: 0 where none at all fails already, at most 1000. */
  readonly factor: number
  /** The check that fails first; null where none does up to 1000. */
  readonly check: Check | null
}

/** A factor, and what the tightest check has to spare there, in nepers. */
interface Tried {
  readonly factor: number
  readonly nepers: number
  readonly check: Check | null
}

/**
 * How far a circuit could go: the factor by which all its wire can grow together until the first check fails.
 *
 * Doubles outward (or, where it fails as it stands, halves inward) until a factor that holds and one that fails are known, then closes
 * in to 0.1 %. Bisection would do; drawing a straight line through the two margins gets there in a third of the steps.
 *
 * @param rows the circuit's rows under these very conditions, where they are known
 */
export function reachOf(
  model: CircuitModel,
  conditions: Conditions,
  rows: CircuitRows = circuitRows(model, conditions),
): ReachResult {
  const tried = (factor: number, found: CircuitRows): Tried => {
    const least = leastMargin(found)
    return { factor, nepers: least?.nepers ?? Number.POSITIVE_INFINITY, check: least?.check ?? null }
  }
  const at = (factor: number): Tried =>
    tried(factor, circuitRows(model, { ...conditions, lengthFactor: factor * conditions.lengthFactor }))
  let good: Tried
  let bad = tried(1, rows)
  if (bad.nepers >= 0) {
    good = bad
    do {
      if (good.factor >= FURTHEST) return { factor: FURTHEST, check: null }
      bad = at(Math.min(FURTHEST, good.factor * 2))
      if (bad.nepers >= 0) good = bad
    } while (bad.nepers >= 0)
  } else {
    good = at(0)
    if (good.nepers < 0) return { factor: 0, check: good.check }
    for (let half = at(0.5); half.factor > NEAREST; half = at(half.factor / 2)) {
      if (half.nepers >= 0) {
        good = half
        break
      }
      bad = half
    }
  }
  for (let step = 0; bad.factor - good.factor > CLOSE * good.factor && bad.factor > NEAREST; step++) {
    const middle = at(between(good, bad, step))
    if (middle.nepers >= 0) good = middle
    else bad = middle
  }
  return { factor: good.factor, check: bad.check }
}

/**
 * Where to look next: where the straight line through both margins crosses zero, a little to this side of it and to that in turn, so that
 * the bracket closes from both ends; in the middle where a margin is not finite, and at every third step, so that it always closes.
 */
function between(good: Tried, bad: Tried, step: number): number {
  const width = bad.factor - good.factor
  const share = good.nepers / (good.nepers - bad.nepers)
  if (step % 3 === 2 || !Number.isFinite(share)) return good.factor + width / 2
  const crossing = good.factor + width * share
  const aside = (CLOSE / 3) * crossing * (step % 3 === 0 ? 1 : -1)
  return Math.min(Math.max(crossing + aside, good.factor + width / 50), bad.factor - width / 50)
}
