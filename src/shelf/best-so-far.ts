import type { Country } from './country'
import { type CircuitDesign, type Cutting, cutting, keyOf, keyOfNet } from './net-design'
import { type Candidate, compareRanks, isGood, kindOf, rankOf, standing } from './rank-nets'

/** So many are kept of each kind, and so many in all: what is not cut as hoped gives way to the next. */
const KEPT_OF_A_KIND = 6
const KEPT_BEST = 40

/** A net that can be laid: its spools can be cut. */
export interface LaidNet extends Candidate, Cutting {
  readonly rank: readonly number[]
}

/** The best nets that were found, of each kind and of all. */
export interface BestSoFar {
  /** Takes a net in; true where it is better than all before it. */
  readonly take: (found: Candidate) => boolean
  readonly best: () => Candidate | undefined
  /** The best, and the best of each kind, that can be cut from the spools: the best first, with as many more as make up so many. */
  readonly listed: (most: number, atLeast: number) => readonly LaidNet[]
}

export function bestSoFar(country: Country): BestSoFar {
  const ranks = new Map<Candidate, readonly number[]>()
  const better = (a: Candidate, b: Candidate) => compareRanks(ranks.get(b)!, ranks.get(a)!)
  const all: Candidate[] = []
  const ofKind = new Map<string, Candidate[]>()
  const keys = new Set<string>()
  const keep = (list: Candidate[], found: Candidate, most: number): void => {
    const last = list.at(-1)
    if (list.length >= most && last && better(found, last) >= 0) return
    let at = list.length
    while (at > 0 && better(found, list[at - 1]!) < 0) at--
    list.splice(at, 0, found)
    if (list.length > most) list.pop()
  }
  const laid = new Map<Candidate, LaidNet | null>()
  const lay = (each: Candidate): LaidNet | null => {
    const known = laid.get(each)
    if (known !== undefined) return known
    const cut = cutting(country, each.taken)
    const found = cut ? { ...each, ...cut, rank: rankOf(each, cut.splices) } : null
    laid.set(each, found)
    return found
  }
  return {
    take: (found) => {
      const key = keyOfNet(country, found.design)
      if (keys.has(key)) return false
      keys.add(key)
      ranks.set(found, rankOf(found))
      const isBest = all.length === 0 || better(found, all[0]!) < 0
      keep(all, found, KEPT_BEST)
      const kind = kindOf(country, found)
      const list = ofKind.get(kind) ?? []
      ofKind.set(kind, list)
      keep(list, found, KEPT_OF_A_KIND)
      return isBest
    },
    best: () => all[0],
    listed: (most, atLeast) => {
      const byRank = (a: LaidNet, b: LaidNet) => compareRanks(b.rank, a.rank)
      const cut = (list: readonly Candidate[]) => list.flatMap((each) => lay(each) ?? []).sort(byRank)
      const best = cut(all)
      const heads = [...ofKind.values()].flatMap((list) => cut(list).slice(0, 1))
      const paired = [...best, ...heads].filter(({ earthed }) => earthed === 0).sort(byRank)[0]
      // Near misses are told only where nothing works; a return through the earth only where it stands better than every pair.
      const worthTelling = (each: LaidNet) =>
        (!best[0] || isGood(each) === isGood(best[0])) &&
        (each.earthed === 0 || !paired || compareRanks(standing(each.rank), standing(paired.rank)) > 0)
      const isMiss = best[0] !== undefined && !isGood(best[0])
      const chosen = new Set(
        [...best.slice(0, 1), ...heads]
          .filter(worthTelling)
          .sort(byRank)
          .slice(0, isMiss ? atLeast : most),
      )
      const others = [...best, ...[...ofKind.values()].flatMap(cut)].filter(worthTelling).sort(byRank)
      // First what lies or is called otherwise, then what has other wires.
      for (const isAlike of [liesAlike, isWiredAlike])
        for (const each of others) {
          if (chosen.size >= atLeast) break
          if (![...chosen].some((other) => isAlike(country, other, each))) chosen.add(each)
        }
      return [...chosen].sort(byRank)
    },
  }
}

type Alike = (country: Country, a: Candidate, b: Candidate) => boolean

const sameBy =
  (of: (country: Country, circuit: CircuitDesign) => string): Alike =>
  (country, ...both) => {
    const [a, b] = both.map(({ design }) =>
      design
        .map((circuit) => of(country, circuit))
        .toSorted()
        .join('\n'),
    )
    return a === b
  }

/** Whether two nets have the same wires between the same places and are fed alike from one place: only their sets differ. */
const isWiredAlike = sameBy((country, circuit) => keyOf(country, { ...circuit, sets: new Map() }))

/** Whether two nets lie between the same places and are fed alike from one place: only sets and wires differ. */
const liesAlike = sameBy((_, { edges, supply }) =>
  [...edges.map(({ edge }) => edge.join('-')).sort(), supply ? `${supply.kind}@${supply.at}` : ''].join(' '),
)
