import { seeded } from '../budget/seeded'
import type { Country } from './country'
import { firstNets } from './first-nets'
import type { Judge } from './judge-net'
import { nearNets } from './near-nets'
import type { NetDesign } from './net-design'
import { type Candidate, compareRanks, kindOf, rankOf } from './rank-nets'

/** What a search may cost, in lines and pairs of telephones of the circuits judged. Counted, not timed: some seconds on a laptop. */
const WORK = 80_000
/** Nets that cost as much as one line or pair where all their circuits were judged before. */
const LOOKS_OF_WORK = 4
/** Beginnings that are bettered, each of another kind. */
const BEGINNINGS = 6
/** Changes by chance with which a net that no single change betters is left, and how often in vain. */
const KICKS = 3
const MOST_IN_VAIN = 60

/** How a search is followed. */
export interface Improving {
  readonly judge: Judge
  /** Takes a net in, and tells how it stands. @param share of the work that is done */
  readonly look: (design: NetDesign, share: number) => Candidate
  readonly isStopped: () => boolean
  /** Whether nothing better can be found. */
  readonly isBest: () => boolean
  /** 1 for a whole search. */
  readonly effort: number
}

const byRank = (a: Candidate, b: Candidate) => compareRanks(rankOf(b), rankOf(a))

/**
 * Seeks nets from many beginnings: the best of each kind are bettered by single changes, each taken as soon as it ranks higher, until no
 * change does; then they are changed by chance and bettered again (iterated local search), until the work is spent or it is in vain. The
 * chances are seeded: the same shelf gets the same nets.
 */
export function improve(country: Country, { judge, look, isStopped, isBest, effort }: Improving): void {
  const work = WORK * effort
  let looks = 0
  const spent = () => judge.work() + looks / LOOKS_OF_WORK
  const isSpent = (most = work) => isStopped() || spent() > most
  const see = (design: NetDesign) => {
    looks++
    return look(design, Math.min(1, spent() / work))
  }
  const heads = new Map<string, Candidate>()
  for (const design of firstNets(country)) {
    if (isSpent(work / 2)) break
    const found = see(design)
    const kind = kindOf(country, found)
    const head = heads.get(kind)
    if (!head || byRank(found, head) < 0) heads.set(kind, found)
  }
  const climb = (from: Candidate, most: number): Candidate => {
    let now = from
    for (let isBetter = true; isBetter; ) {
      isBetter = false
      for (const design of nearNets(country, now.design)) {
        if (isSpent(most)) return now
        const found = see(design)
        if (byRank(found, now) >= 0) continue
        now = found
        isBetter = true
        break
      }
    }
    return now
  }
  const begun = [...heads.values()].sort(byRank).slice(0, BEGINNINGS)
  const tops = begun.map((first, k) => {
    const before = spent()
    return climb(first, before + (work - before) / (begun.length - k))
  })
  const random = seeded(1)
  for (let inVain = 0; tops.length > 0 && inVain < MOST_IN_VAIN && !isBest() && !isSpent(); inVain++) {
    const k = Math.floor(random() ** 2 * tops.length)
    tops.sort(byRank)
    let design: NetDesign | undefined = tops[k]!.design
    for (let kick = 0; kick < KICKS && design; kick++) design = anyOf(nearNets(country, design), random)
    if (!design) continue
    const found = climb(see(design), work)
    if (byRank(found, tops[k]!) >= 0) continue
    tops[k] = found
    inVain = 0
  }
}

/** One of some things, each as likely as the others. */
function anyOf<T>(things: Iterable<T>, random: () => number): T | undefined {
  let chosen: T | undefined
  let seen = 0
  for (const each of things) if (random() * ++seen < 1) chosen = each
  return chosen
}
