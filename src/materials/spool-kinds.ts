/** Spools of one length, and how many of them there are; `Infinity` where they can be had at will. */
export interface SpoolKind {
  readonly lengthM: number
  readonly count: number
}

/** Lengths that differ by less than this are the same: it takes up the rounding of sums, m. */
export const ROUNDING_M = 1e-6

/** Steps of one search for the shortest set, and for all sets. Counted, not timed: the same plan always gets the same spools. */
const STEPS = 400
const SET_STEPS = 150
/** Counts held in the sets kept of one search: the more kinds, the fewer sets. */
const KEPT = 400

export function total(numbers: readonly number[]): number {
  let sum = 0
  for (let i = 0; i < numbers.length; i++) sum += numbers[i]!
  return sum
}

/** Length of a set of spools given as a count for each kind, m. */
export const lengthOf = (kinds: readonly SpoolKind[], counts: readonly number[]): number =>
  counts.reduce((sumM, count, k) => sumM + count * kinds[k]!.lengthM, 0)

/** How many spools there are of each length. */
export function countsByLength(spools: readonly { readonly lengthM: number }[]): ReadonlyMap<number, number> {
  const counts = new Map<number, number>()
  for (const { lengthM } of spools) counts.set(lengthM, (counts.get(lengthM) ?? 0) + 1)
  return counts
}

/** Longest first, one entry a length, without those that two half splices would eat up. */
export function usableKinds(kinds: readonly SpoolKind[], wasteM: number): readonly SpoolKind[] {
  const counts = new Map<number, number>()
  for (const { lengthM, count } of kinds) {
    if (lengthM > wasteM && count > 0) counts.set(lengthM, (counts.get(lengthM) ?? 0) + count)
  }
  return [...counts].map(([lengthM, count]) => ({ lengthM, count })).sort((a, b) => b.lengthM - a.lengthM)
}

/** The longest run that all the spools together can be spliced into, m. */
export function longestChainM(kinds: readonly SpoolKind[], wasteM: number): number {
  const usable = usableKinds(kinds, wasteM)
  return usable.length === 0 ? 0 : wasteM + total(usable.map((kind) => kind.count * (kind.lengthM - wasteM)))
}

/** How many of the longest spools reach `netM` when each gives its length less one splice; ∞ where all of them do not. */
export function fewestSpools(kinds: readonly SpoolKind[], wasteM: number, netM: number): number {
  let left = netM - ROUNDING_M
  let spools = 0
  for (const { lengthM, count } of kinds) {
    if (left <= 0) return spools
    const take = Math.min(count, Math.ceil(left / (lengthM - wasteM)))
    left -= take * (lengthM - wasteM)
    spools += take
  }
  return left <= 0 ? spools : Number.POSITIVE_INFINITY
}

/** What a search found, and whether it looked at all there is. */
export interface Found<T> {
  readonly found: T
  readonly isWhole: boolean
}

/**
 * Every set of `howMany` spools that reaches `netM`, each giving its length less one splice, and that does not reach it with one
 * spool less; the longest first, as a count for each kind.
 *
 * @param kinds sorted from the longest to the shortest, no length twice
 */
export function minimalSets(
  kinds: readonly SpoolKind[],
  howMany: number,
  netM: number,
  wasteM: number,
): Found<readonly (readonly number[])[]> {
  const sets: number[][] = []
  const most = Math.max(10, Math.floor(KEPT / kinds.length))
  const counts = kinds.map(() => 0)
  let steps = 0
  const search = (k: number, left: number, missingM: number, shortestM: number): void => {
    if (++steps > SET_STEPS || sets.length >= most) return
    if (left === 0) {
      if (missingM <= ROUNDING_M && missingM + shortestM > ROUNDING_M) sets.push([...counts])
      return
    }
    const kind = kinds[k]
    if (!kind || left * (kind.lengthM - wasteM) < missingM - ROUNDING_M) return
    const gainM = kind.lengthM - wasteM
    for (let take = Math.min(left, kind.count); take >= 0; take--) {
      counts[k] = take
      search(k + 1, left - take, missingM - take * gainM, take > 0 ? gainM : shortestM)
    }
    counts[k] = 0
  }
  if (howMany > 0) search(0, howMany, netM, 0)
  else if (netM <= ROUNDING_M) sets.push(counts)
  return { found: sets, isWhole: steps <= SET_STEPS && sets.length < most }
}

/** Length of the `n` longest, or of the `n` shortest, of the kinds from `k` on, m; undefined where there are not so many. */
function extremeM(
  kinds: readonly SpoolKind[],
  k: number,
  n: number,
  end: 'longest' | 'shortest',
): number | undefined {
  let left = n
  let sumM = 0
  for (let i = k; i < kinds.length && left > 0; i++) {
    const kind = kinds[end === 'longest' ? i : kinds.length - 1 - (i - k)]!
    const take = Math.min(left, kind.count)
    sumM += take * kind.lengthM
    left -= take
  }
  return left > 0 ? undefined : sumM
}

/**
 * The shortest set found of exactly `howMany` spools that together are at least `atLeastM` long, as a count for each kind; undefined
 * where there is none.
 *
 * A depth-first search from the longest kind down, cut off where the longest left cannot reach the length or the shortest left
 * cannot beat the best.
 *
 * @param kinds sorted from the longest to the shortest, no length twice
 */
export function leastLength(
  kinds: readonly SpoolKind[],
  howMany: number,
  atLeastM: number,
): Found<readonly number[] | undefined> {
  if (howMany === 1) {
    const shortest = kinds.findLastIndex((kind) => kind.count > 0 && kind.lengthM >= atLeastM - ROUNDING_M)
    return { found: shortest < 0 ? undefined : kinds.map((_, k) => (k === shortest ? 1 : 0)), isWhole: true }
  }
  let best: number[] | undefined
  let bestM = Number.POSITIVE_INFINITY
  let steps = 0
  const counts = kinds.map(() => 0)

  const search = (k: number, left: number, sumM: number): void => {
    if (++steps > STEPS) return
    if (left === 0) {
      if (sumM >= atLeastM - ROUNDING_M && sumM < bestM) {
        best = [...counts]
        bestM = sumM
      }
      return
    }
    const mostM = extremeM(kinds, k, left, 'longest')
    if (mostM === undefined || sumM + mostM < atLeastM - ROUNDING_M) return
    if (sumM + extremeM(kinds, k, left, 'shortest')! >= bestM) return
    const kind = kinds[k]!
    // The fewest of a long kind with which the shorter ones still reach the length come first: they leave least over.
    const nextM = kinds[k + 1]?.lengthM ?? 0
    const fewest = Math.ceil((atLeastM - sumM - left * nextM) / (kind.lengthM - nextM) - ROUNDING_M)
    const most = Math.min(left, kind.count)
    for (let take = Math.max(0, fewest); take <= most; take++) {
      counts[k] = take
      search(k + 1, left - take, sumM + take * kind.lengthM)
    }
    counts[k] = 0
  }
  const longestM = extremeM(kinds, 0, howMany, 'longest')
  if (longestM !== undefined && longestM >= atLeastM - ROUNDING_M) {
    best = []
    bestM = longestM
    for (const { count } of kinds) best.push(Math.min(count, howMany - total(best)))
    search(0, howMany, 0)
  }
  return { found: best, isWhole: steps <= STEPS }
}
