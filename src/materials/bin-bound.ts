import { ROUNDING_M, total } from './spool-kinds'

/** Limits tried at most; each of them gives a bound that holds. */
const LIMITS = 300

/**
 * No fewer bins than this hold the items: the lower bound L2 of Martello and Toth.
 *
 * For a limit t up to half a bin: an item above (capacity − t) stands alone, an item above half a bin takes a bin of its own, and
 * what items of t to half a bin cannot put beside the latter needs further bins; the best over all t.
 *
 * Source: S. Martello, P. Toth, Knapsack Problems: Algorithms and Computer Implementations (1990), chapter 8.
 */
export function fewestBins(sizes: readonly number[], capacity: number): number {
  let best = Math.ceil(total(sizes) / capacity - ROUNDING_M)
  const small = sizes.filter((size) => size <= capacity / 2)
  const limits = new Set(small.filter((_, i) => i % Math.ceil(small.length / LIMITS) === 0)).add(0)
  for (const limit of limits) {
    let alone = 0
    let large = 0
    let largeSum = 0
    let smallSum = 0
    for (const size of sizes) {
      if (size > capacity - limit + ROUNDING_M) alone++
      else if (size > capacity / 2 + ROUNDING_M) {
        large++
        largeSum += size
      } else if (size >= limit) smallSum += size
    }
    const further = Math.ceil((smallSum - (large * capacity - largeSum)) / capacity - ROUNDING_M)
    best = Math.max(best, alone + large + Math.max(0, further))
  }
  return best
}
