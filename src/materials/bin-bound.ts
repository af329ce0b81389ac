import { ROUNDING_M, total } from './spool-kinds'

/** Limits tried at most; each of them gives a bound that holds. */
const LIMITS = 60
/** Parts of a bin that items are counted in at most: with more the bound hardly rises. */
const MOST_PARTS = 12

/**
 * No fewer bins than this hold the items: the better of two lower bounds, each of which sees what the other does not.
 *
 * @param enough so many bins are known to hold them: no bound is higher
 */
export function fewestBins(
  sizes: readonly number[],
  capacity: number,
  enough = Number.POSITIVE_INFINITY,
): number {
  const least = Math.ceil(total(sizes) / capacity - ROUNDING_M)
  if (least >= enough) return least
  const large = byLargeItems(sizes, capacity)
  return large >= enough ? large : Math.max(large, byParts(sizes, capacity))
}

/**
 * How many items fit beside each other at most, whatever their sizes: items above a third of a bin go in twos, above a quarter in threes.
 *
 * Σ u(x) for u(x) = ⌊(k + 1) x⌋ / k, and u(x) = x where (k + 1) x is whole, with x the item's share of a bin; the best over k.
 *
 * Source: S. P. Fekete, J. Schepers, New classes of fast lower bounds for bin packing problems, Mathematical Programming 91 (2001), the
 * dual feasible functions u⁽ᵏ⁾.
 */
function byParts(sizes: readonly number[], capacity: number): number {
  let best = 0
  for (let parts = 2; parts <= MOST_PARTS; parts++) {
    let sum = 0
    for (const size of sizes) {
      const count = ((parts + 1) * size) / capacity
      const whole = Math.round(count)
      sum += Math.abs(count - whole) <= ROUNDING_M ? whole / (parts + 1) : Math.floor(count) / parts
    }
    best = Math.max(best, Math.ceil(sum - ROUNDING_M))
  }
  return best
}

/**
 * The lower bound L2. For a limit t up to half a bin: an item above (capacity − t) stands alone, an item above half a bin takes a bin
 * of its own, and what items of t to half a bin cannot put beside the latter needs further bins; the best over all t.
 *
 * Source: S. Martello, P. Toth, Knapsack Problems: Algorithms and Computer Implementations (1990), chapter 8.
 */
function byLargeItems(sizes: readonly number[], capacity: number): number {
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
