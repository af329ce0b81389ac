import type { CircuitModel } from './circuit-model'
import { circuitRows } from './circuit-rows'
import type { Conditions } from './conditions'
import type { Check } from './rows'
import { leastMargin } from './verdict'

export const FURTHEST = 1000
/** Relative width at which the search stops. */
const CLOSE = 0.001

export interface ReachResult {
  /** Factor on every line's wire up to which no check fails: 0 where none at all fails already, at most 1000. */
  readonly factor: number
  /** The check that fails first; null where none does up to 1000. */
  readonly check: Check | null
}

/**
 * How far a circuit could go: the factor by which all its wire can grow together until the first check fails.
 *
 * Steps outward (or, where it fails as it stands, inward) by halves and doubles until a factor that holds and one that fails
 * are known, then bisects to 0.1 %.
 */
export function reachOf(model: CircuitModel, conditions: Conditions): ReachResult {
  const failureAt = (factor: number): Check | null => {
    const least = leastMargin(
      circuitRows(model, { ...conditions, lengthFactor: factor * conditions.lengthFactor }),
    )
    return least && least.nepers < 0 ? least.check : null
  }
  let good = 0
  let bad = 1
  let check = failureAt(1)
  if (check) {
    const atNothing = failureAt(0)
    if (atNothing) return { factor: 0, check: atNothing }
    for (let factor = 0.5; factor > 1e-4; factor /= 2) {
      const failure = failureAt(factor)
      if (!failure) {
        good = factor
        break
      }
      bad = factor
      check = failure
    }
  } else {
    good = 1
    for (;;) {
      if (good >= FURTHEST) return { factor: FURTHEST, check: null }
      bad = Math.min(FURTHEST, good * 2)
      check = failureAt(bad)
      if (check) break
      good = bad
    }
  }
  while (bad - good > CLOSE * good && bad > 1e-6) {
    const middle = (good + bad) / 2
    const failure = failureAt(middle)
    if (failure) {
      bad = middle
      check = failure
    } else good = middle
  }
  return { factor: good, check }
}
