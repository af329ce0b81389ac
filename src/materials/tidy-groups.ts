import { type Group, spoolList } from './packing'
import { leastLength, lengthOf, ROUNDING_M, type SpoolKind, total } from './spool-kinds'

/** Kinds looked at in all the pairs of groups that are tried for joining. */
const LOOKS = 200_000

/** Runs laid together, with so many spools of each kind. */
export interface SpoolGroup {
  readonly runs: readonly number[]
  readonly counts: readonly number[]
  readonly needM: number
}

/** What the `howMany` longest spools can be spliced into, m. */
function reachM(kinds: readonly SpoolKind[], howMany: number, wasteM: number): number {
  let left = howMany
  let sumM = wasteM
  for (const { lengthM, count } of kinds) {
    const take = Math.min(left, count)
    sumM += take * (lengthM - wasteM)
    left -= take
    if (left === 0) break
  }
  return left > 0 ? Number.NEGATIVE_INFINITY : sumM
}

const plus = (kinds: readonly SpoolKind[], counts: readonly number[]): readonly SpoolKind[] =>
  kinds.map(({ lengthM, count }, k) => ({ lengthM, count: count + counts[k]! }))

const less = (kinds: readonly SpoolKind[], counts: readonly number[]): readonly SpoolKind[] =>
  kinds.map(({ lengthM, count }, k) => ({ lengthM, count: count - counts[k]! }))

/** The shortest spools found, so many of them, for so much wire with the splices between them. */
function spoolsFor(kinds: readonly SpoolKind[], howMany: number, needM: number, wasteM: number) {
  return leastLength(kinds, howMany, needM + wasteM * (howMany - 1)).found
}

/**
 * Two groups of m and n spools that m + n − 1 spools can serve are made one: as many splices, one spool less. Done as long as
 * there are two such groups, those that need least first.
 */
export function joined(
  groups: readonly SpoolGroup[],
  stock: readonly SpoolKind[],
  wasteM: number,
): { readonly groups: readonly SpoolGroup[]; readonly stock: readonly SpoolKind[] } {
  const open = groups.toSorted((a, b) => a.needM - b.needM)
  let left = stock
  let pairs = LOOKS / stock.length
  for (let i = 0; i < open.length; i++) {
    for (let j = i + 1; j < open.length && pairs > 0; j++, pairs--) {
      const a = open[i]!
      const b = open[j]!
      const counts = a.counts.map((n, k) => n + b.counts[k]!)
      const howMany = total(counts) - 1
      const needM = a.needM + b.needM
      const own = plus(left, counts)
      if (reachM(own, howMany, wasteM) < needM - ROUNDING_M) continue
      const taken = spoolsFor(own, howMany, needM, wasteM)
      if (!taken) continue
      left = less(own, taken)
      open[i] = { runs: [...a.runs, ...b.runs], counts: taken, needM }
      open.splice(j, 1)
      j = i
    }
  }
  return { groups: open, stock: left }
}

/** Each group's spools exchanged for shorter ones that do as well, from what no group uses. */
export function shortened(
  groups: readonly SpoolGroup[],
  stock: readonly SpoolKind[],
  wasteM: number,
): readonly Group[] {
  let left = stock
  return groups.map(({ runs, counts, needM }) => {
    const own = plus(left, counts)
    const shorter = spoolsFor(own, total(counts), needM, wasteM)
    const taken = shorter && lengthOf(own, shorter) < lengthOf(own, counts) ? shorter : counts
    left = less(own, taken)
    return { runs, spoolsM: spoolList(own, taken) }
  })
}
