/** What comes before what: by rank, and among the same ranks by name, so that all hands have one order. */
export const inRankOrder = (
  [a, first]: readonly [name: string, rank: number],
  [b, second]: readonly [name: string, rank: number],
): number => first - second || (a < b ? -1 : a > b ? 1 : 0)

/**
 * Ranks that put names into this order, the given ones kept for as many names as can be: what is new comes half way between its
 * neighbours, or after the last.
 */
export function rankedAs(
  names: readonly string[],
  known: (name: string) => number | undefined,
): ReadonlyMap<string, number> {
  const kept = longestRising(
    names.flatMap((name): (readonly [string, number])[] => {
      const rank = known(name)
      return rank === undefined ? [] : [[name, rank]]
    }),
  )
  const ranks = new Map<string, number>()
  let last = 0
  names.forEach((name, at) => {
    const own = kept.get(name)
    if (own !== undefined && (own > last || at === 0 || own === last)) {
      ranks.set(name, own)
      last = own
      return
    }
    const next = names.slice(at + 1).find((each) => kept.has(each))
    const above = next === undefined ? undefined : kept.get(next)!
    const between = above === undefined ? Math.floor(last) + 1 : (last + above) / 2
    // No number is left between two neighbours: from here on all are counted anew.
    if (above !== undefined && !(between > last && between < above)) kept.clear()
    last = between > last ? between : last + 1
    ranks.set(name, last)
  })
  return ranks
}

/** The longest part of a list that is in order as it stands. */
function longestRising(list: readonly (readonly [string, number])[]): Map<string, number> {
  const isSorted = list.every((each, at) => at === 0 || inRankOrder(list[at - 1]!, each) < 0)
  if (isSorted) return new Map(list)
  const tails: number[] = []
  const before: number[] = []
  list.forEach((each, at) => {
    let [low, high] = [0, tails.length]
    while (low < high) {
      const middle = (low + high) >> 1
      if (inRankOrder(list[tails[middle]!]!, each) < 0) low = middle + 1
      else high = middle
    }
    before[at] = low > 0 ? tails[low - 1]! : -1
    tails[low] = at
  })
  const kept: (readonly [string, number])[] = []
  for (let at = tails.at(-1) ?? -1; at >= 0; at = before[at]!) kept.push(list[at]!)
  return new Map(kept.reverse())
}
