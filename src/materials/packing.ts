import { leastLength, lengthOf, ROUNDING_M, type SpoolKind } from './spool-kinds'

/**
 * Runs of wire that share spools: the runs laid end to end use up the spools laid end to end. A spool's end falls inside a run and
 * makes a splice there, so a group of m spools has m − 1 splices.
 */
export interface Group {
  /** Indices of the runs. */
  readonly runs: readonly number[]
  readonly spoolsM: readonly number[]
}

/** Figures of a packing, compared from the first to the last. */
export interface Cost {
  readonly splices: number
  readonly spools: number
  /** Length of the spools used, m. */
  readonly lengthM: number
}

/** @template C what one group is cut into */
export interface Packing<C> {
  readonly groups: readonly Group[]
  /** Of each of the groups. */
  readonly cuts: readonly C[]
  readonly cost: Cost
  /** No packing costs less; equal to `cost` where that is proved. */
  readonly bound: Cost
}

/** What is to be packed, and from what. */
export interface Packable<C> {
  /** Lengths of the runs, m, each above 0. */
  readonly needsM: readonly number[]
  /** Sorted from the longest to the shortest, no length twice, each longer than a splice's waste. */
  readonly kinds: readonly SpoolKind[]
  readonly wasteM: number
  /** Undefined where a group cannot really be cut: a splice may fall too close to the end of a run. */
  readonly cut: (group: Group) => C | undefined
}

export const isLess = (a: Cost, b: Cost): boolean => {
  if (a.splices !== b.splices) return a.splices < b.splices
  if (a.spools !== b.spools) return a.spools < b.spools
  return a.lengthM < b.lengthM - ROUNDING_M
}

/** The bound for so many splices and spools: that many spools, the shortest that together hold the wire. */
export function boundFor(
  kinds: readonly SpoolKind[],
  splices: number,
  spools: number,
  wireM: number,
  wasteM: number,
): Cost {
  const leastM = wireM + wasteM * splices
  const { found, isWhole } = leastLength(kinds, spools, leastM)
  return { splices, spools, lengthM: found && isWhole ? lengthOf(kinds, found) : leastM }
}

/** Sums from each place of an order to its end; one entry more than the order has, 0. */
export function sumsToEnd(order: readonly number[], of: readonly number[]): readonly number[] {
  const sums = new Array<number>(order.length + 1).fill(0)
  for (let i = order.length - 1; i >= 0; i--) sums[i] = sums[i + 1]! + of[order[i]!]!
  return sums
}

/** So many spools of each kind, one by one. */
export function spoolList(kinds: readonly SpoolKind[], counts: readonly number[]): readonly number[] {
  const spoolsM: number[] = []
  for (const [k, { lengthM }] of kinds.entries())
    for (let taken = counts[k] ?? 0; taken > 0; taken--) spoolsM.push(lengthM)
  return spoolsM
}
