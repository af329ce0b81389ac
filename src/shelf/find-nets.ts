import { bestSoFar, type LaidNet } from './best-so-far'
import type { Country } from './country'
import { everyNet } from './every-net'
import { improve } from './improve-nets'
import { MOST_JOINED } from './joint-trees'
import { judgeOf, type Verdicts, workOf } from './judge-net'
import { leastBurdenM, leastWireM } from './least-wire'
import { keyOf, keyOfNet, type NetDesign } from './net-design'
import { type Candidate, candidate, compareRanks, isGood, mostRank, rankOf } from './rank-nets'

/** What judging every net may cost, in lines and pairs of telephones, and how many nets are put together. Counted, not timed: some seconds. */
const MOST_WORK = 200_000
const MOST_NETS = 60_000

/** How a search went. */
export interface Search {
  /** Every net that can be made was looked at. */
  readonly isWhole: boolean
  /** None is better than the first: all were looked at, or no net could stand better or take less wire. */
  readonly isBest: boolean
  /** Circuits judged. */
  readonly judged: number
  /** No net can take less wire than this, m: the least that joins all who must talk, each place to another. */
  readonly leastWireM: number
}

export interface Found {
  readonly nets: readonly LaidNet[]
  readonly search: Search
}

/** What is told while a search goes on; `isStopped` ends it with what it has. */
export interface Searching {
  readonly onBetter?: (nets: () => readonly LaidNet[], share: number) => void
  readonly isStopped?: () => boolean
}

/** What a search may spend, and what it knows before it begins. */
interface Means {
  /** 1 for a whole search; less where only a hint is wanted. */
  readonly effort?: number
  readonly known?: Verdicts
}

const LISTED = 6
const AT_LEAST = 3

/**
 * Nets that can be made of a shelf, the best first (see `rankOf`): all of them looked at where they are few, else bettered step by step
 * from many beginnings. The same shelf always gets the same nets.
 *
 */
export function findNets(
  country: Country,
  searching: Searching = {},
  { effort = 1, known }: Means = {},
): Found {
  const best = bestSoFar(country)
  const judge = judgeOf(country, known)
  const listed = () => best.listed(LISTED, AT_LEAST)
  const seen = new Map<string, Candidate>()
  const look = (design: NetDesign, share: number) => {
    const key = keyOfNet(country, design)
    const before = seen.get(key)
    if (before) return before
    const found = candidate(country, design, judge.net(design))
    seen.set(key, found)
    if (best.take(found)) searching.onBetter?.(listed, share)
    return found
  }
  const isStopped = searching.isStopped ?? (() => false)
  const leastM = leastWireM(country)
  const most = mostRank(leastBurdenM(country))
  const isSmall = isCountable(country, effort)
  if (isSmall) {
    let count = 0
    for (const design of everyNet(country)!) {
      if (++count % 64 === 0 && isStopped()) break
      look(design, 0)
    }
  }
  // Near misses are looked for like any other net.
  const first = best.best()
  if (!isSmall || !first || !isGood(first)) {
    const isBest = () => {
      const now = best.best()
      return now !== undefined && compareRanks(rankOf(now).slice(0, most.length), most) >= 0
    }
    improve(country, { judge, look, isStopped, isBest, effort: isSmall ? effort / 8 : effort })
  }
  const nets = listed()
  const isWhole = isSmall && !isStopped() && (!country.meeting || country.shelf.places.length <= MOST_JOINED)
  const isBest =
    isWhole || (nets[0] !== undefined && compareRanks(nets[0].rank.slice(0, most.length), most) >= 0)
  return { nets, search: { isWhole, isBest, judged: judge.count(), leastWireM: leastM } }
}

/** Whether all nets of a shelf are few enough to be looked at. */
function isCountable(country: Country, effort: number): boolean {
  const all = everyNet(country)
  if (!all) return false
  const circuits = new Set<string>()
  let [nets, work] = [0, 0]
  for (const design of all) {
    if (++nets > MOST_NETS * effort) return false
    for (const circuit of design) {
      const key = keyOf(country, circuit)
      if (circuits.has(key)) continue
      circuits.add(key)
      work += workOf(circuit)
    }
    if (work > MOST_WORK * effort) return false
  }
  return true
}
