import type { CircuitModel } from './circuit-model'
import type { Conditions } from './conditions'
import type { Check, CircuitRows } from './rows'
import { type Least, leastOfRows, leastUnder } from './verdict'

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

/** A factor, and what the checks have to spare there. */
interface Tried extends Least {
  readonly factor: number
}

/**
 * How far a circuit could go: the factor by which all its wire can grow together until the first check fails.
 *
 * Doubles outward (or, where it fails as it stands, halves inward) until a factor that holds and one that fails are known, then closes
 * in to 0.1 %. Bisection would do; following the curve of the margins gets there in a quarter of the steps.
 *
 * @param rows the circuit's rows under these very conditions, where they are known
 */
export function reachOf(model: CircuitModel, conditions: Conditions, rows?: CircuitRows): ReachResult {
  const at = (factor: number): Tried => ({
    factor,
    ...leastUnder(model, { ...conditions, lengthFactor: factor * conditions.lengthFactor }),
  })
  let good: Tried
  let bad: Tried = { factor: 1, ...(rows ? leastOfRows(rows) : leastUnder(model, conditions)) }
  let before = bad
  if (bad.nepers >= 0) {
    good = bad
    do {
      if (good.factor >= FURTHEST) return { factor: FURTHEST, check: null }
      bad = at(Math.min(FURTHEST, good.factor * 2))
      if (bad.nepers >= 0) {
        before = good
        good = bad
      }
    } while (bad.nepers >= 0)
  } else {
    good = at(0)
    if (good.nepers < 0) return { factor: 0, check: good.check }
    for (let half = at(0.5); half.factor > NEAREST; half = at(half.factor / 2)) {
      if (half.nepers >= 0) {
        good = half
        break
      }
      before = bad
      bad = half
    }
  }
  let widest = Number.POSITIVE_INFINITY
  for (let step = 0; bad.factor - good.factor > CLOSE * good.factor && bad.factor > NEAREST; step++) {
    const width = bad.factor - good.factor
    // In three steps it must have come to an eighth: else the curve is none that can be followed there.
    const isSlow = step % 3 === 0 && width > widest / 8
    if (step % 3 === 0) widest = width
    const middle = at(isSlow ? good.factor + width / 2 : between(good, bad, before))
    if (middle.nepers >= 0) {
      before = good
      good = middle
    } else {
      before = bad
      bad = middle
    }
  }
  return { factor: good.factor, check: bad.check }
}

/**
 * Where to look next: where the first of the kinds of checks crosses zero, a little to that side of it on which the bracket is wider, so
 * that it closes from both ends; in the middle where a margin is not finite.
 */
function between(good: Tried, bad: Tried, before: Tried): number {
  const width = bad.factor - good.factor
  let crossing = Number.POSITIVE_INFINITY
  for (let kind = 0; kind < bad.ofKinds.length; kind++)
    if (bad.ofKinds[kind]! < 0) crossing = Math.min(crossing, crossingOf(good, bad, before, kind))
  if (!Number.isFinite(crossing)) return good.factor + width / 2
  const [under, over] = [crossing - good.factor, bad.factor - crossing]
  // As far aside as the crossing may be out: a part of the way to the nearer end.
  const aside = Math.max((CLOSE / 3) * crossing, Math.min(under, over) / 30)
  const factor = over > under ? crossing + aside : crossing - aside
  return Math.min(Math.max(factor, good.factor + width / 50), bad.factor - width / 50)
}

/** Of one kind of check, by inverse quadratic interpolation; along the straight line where that leads out of the bracket. */
function crossingOf(good: Tried, bad: Tried, before: Tried, kind: number): number {
  const [a, b, c] = [good.ofKinds[kind]!, bad.ofKinds[kind]!, before.ofKinds[kind]!]
  const curved =
    (good.factor * b * c) / ((a - b) * (a - c)) +
    (bad.factor * a * c) / ((b - a) * (b - c)) +
    (before.factor * a * b) / ((c - a) * (c - b))
  if (curved > good.factor && curved < bad.factor) return curved
  return good.factor + ((bad.factor - good.factor) * a) / (a - b)
}
