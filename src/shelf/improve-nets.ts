import type { Country } from './country'
import { firstNets } from './first-nets'
import type { Judge } from './judge-net'
import { nearNets } from './near-nets'
import type { NetDesign } from './net-design'
import { type Candidate, compareRanks, kindOf, rankOf } from './rank-nets'

/** What a search may cost, in lines and pairs of telephones of the circuits judged. Counted, not timed: some seconds on a laptop. */
const WORK = 60_000
/** Beginnings that are bettered, each of another kind. */
const BEGINNINGS = 6

/**
 * Seeks nets from many beginnings: the best of each kind are bettered by single changes, each taken as soon as it ranks higher, until no
 * change does or the work is spent.
 */
export function improve(
  country: Country,
  judge: Judge,
  look: (design: NetDesign, share: number) => Candidate,
  effort: number,
  isStopped: () => boolean,
): void {
  const work = WORK * effort
  const heads = new Map<string, Candidate>()
  const ranks = (a: Candidate, b: Candidate) => compareRanks(rankOf(b), rankOf(a))
  for (const design of firstNets(country)) {
    if (isStopped() || judge.work() > work / 2) break
    const found = look(design, judge.work() / work)
    const kind = kindOf(country, found)
    const head = heads.get(kind)
    if (!head || ranks(found, head) < 0) heads.set(kind, found)
  }
  const begun = [...heads.values()].sort(ranks).slice(0, BEGINNINGS)
  for (const [k, first] of begun.entries()) {
    const spent = judge.work()
    const most = spent + (work - spent) / (begun.length - k)
    let now = first
    for (let isBetter = true; isBetter; ) {
      isBetter = false
      for (const design of nearNets(country, now.design)) {
        if (isStopped() || judge.work() > most) return
        const found = look(design, judge.work() / work)
        if (ranks(found, now) >= 0) continue
        now = found
        isBetter = true
        break
      }
    }
  }
}
