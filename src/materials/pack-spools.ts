import { fewestBins } from './bin-bound'
import {
  fewestSpools,
  leastLength,
  lengthOf,
  longestChainM,
  minimalSets,
  ROUNDING_M,
  SETS,
  type SpoolKind,
  total,
  usableKinds,
} from './spool-kinds'

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

export interface Packing {
  readonly groups: readonly Group[]
  readonly cost: Cost
  /** No packing costs less; equal to `cost` where that is proved. */
  readonly bound: Cost
}

/** What is to be packed, from what. */
export interface Packable {
  /** Lengths of the runs, m, each above 0. */
  readonly needsM: readonly number[]
  readonly kinds: readonly SpoolKind[]
  readonly wasteM: number
  /** Whether a group can really be cut: a splice may fall too close to the end of a run. */
  readonly isCuttable: (group: Group) => boolean
}

/** Trials after which the best packing found so far is taken. Counted, not timed: the same plan always gets the same spools. */
export const TRIALS = 2000

/** One group while it grows: its spools of each kind, and the wire left on them beyond its runs and splices. */
interface Open {
  readonly runs: readonly number[]
  readonly counts: readonly number[]
  readonly needM: number
  readonly restM: number
}

interface State {
  readonly open: readonly Open[]
  readonly stock: readonly SpoolKind[]
  readonly splices: number
  readonly spools: number
}

/** One way to lay the next run: in which group, or a new one, with which spools added. */
interface Move {
  readonly at: number
  readonly added: readonly number[]
  readonly spools: number
  readonly splices: number
  readonly restM: number
}

const ZERO: Cost = { splices: 0, spools: 0, lengthM: 0 }

const isLess = (a: Cost, b: Cost): boolean => {
  if (a.splices !== b.splices) return a.splices < b.splices
  if (a.spools !== b.spools) return a.spools < b.spools
  return a.lengthM < b.lengthM - ROUNDING_M
}

/** Cheapest first; among equals the tightest place for a run that needs no spool, and for added spools what `longest` says. */
const byCost = (longest: boolean) => (a: Move, b: Move) =>
  a.splices - b.splices ||
  a.spools - b.spools ||
  (longest && a.spools > 0 ? b.restM - a.restM : a.restM - b.restM) ||
  a.at - b.at

/** Sums from each place of the order to its end; one entry more than the order, 0. */
function tails(order: readonly number[], of: readonly number[]): readonly number[] {
  const sums = [0]
  for (const run of order.toReversed()) sums.unshift(sums[0]! + of[run]!)
  return sums
}

/** Each group's spools exchanged for shorter ones that do as well, from what the groups have not used. */
function shortened(state: State, kinds: readonly SpoolKind[], wasteM: number): readonly Group[] {
  const left = kinds.map(({ lengthM, count }, k) => ({ lengthM, count: state.stock[k]?.count ?? count }))
  return state.open.map(({ runs, counts, needM }) => {
    const own = left.map(({ lengthM, count }, k) => ({ lengthM, count: count + (counts[k] ?? 0) }))
    const spools = total(counts)
    const taken = leastLength(own, spools, needM + wasteM * (spools - 1)) ?? counts
    for (const [k, kind] of own.entries()) left[k] = { ...kind, count: kind.count - (taken[k] ?? 0) }
    return { runs, spoolsM: own.flatMap(({ lengthM }, k) => Array<number>(taken[k] ?? 0).fill(lengthM)) }
  })
}

/**
 * Shares spools out among runs of wire: the fewest splices, then the fewest spools, then the least length of spools.
 *
 * splices = spools − groups; so with the splices at their least (each run alone, on the longest spools) the fewest spools are the
 * most groups joined. What the runs leave beyond whole spools must be packed into groups of one spool's length, and that is bin
 * packing: NP-hard, and here the whole of the hard part. A depth-first branch and bound puts the runs into groups, the
 * largest first. It is exact where it ends within `trials`; else the best so far is taken, and `bound` tells how far that may
 * be from the best there is.
 *
 * Spools at will: runs are packed on the longest kind alone, which costs no splice and no spool, and each group is then given the
 * shortest spools that do. From a stock, every minimal set of spools is tried for each run.
 *
 * @returns undefined where the spools do not reach
 */
export function packSpools(packable: Packable, trials = TRIALS): Packing | undefined {
  const { needsM, wasteM, isCuttable } = packable
  if (needsM.length === 0) return { groups: [], cost: ZERO, bound: ZERO }
  const usable = usableKinds(packable.kinds, wasteM)
  const totalM = total(needsM)
  const longest = usable[0]
  if (!longest || totalM > longestChainM(usable, wasteM) + ROUNDING_M) return undefined

  const atWill = longest.count === Number.POSITIVE_INFINITY
  const kinds = atWill ? [longest] : usable
  const splicesOf = needsM.map((needM) => Math.max(1, fewestSpools(usable, wasteM, needM - wasteM)) - 1)
  const remainderM = needsM.map((needM, run) => needM - splicesOf[run]! * (longest.lengthM - wasteM))
  const sizeM = atWill ? remainderM : needsM
  const order = needsM.map((_, run) => run).sort((a, b) => sizeM[b]! - sizeM[a]! || a - b)
  const splicesFrom = tails(order, splicesOf)
  const remainderFromM = tails(order, remainderM)
  const empty: State = { open: [], stock: kinds, splices: 0, spools: 0 }
  const bound = lowerBound(longest.lengthM)

  let best: { readonly groups: readonly Group[]; readonly cost: Cost } | undefined
  let trialsLeft = trials
  let isWhole = true

  function lowerBound(longestM: number): Cost {
    const splices = splicesFrom[0]!
    const groups = atWill
      ? fewestBins(remainderM, longestM)
      : Math.max(1, Math.ceil(remainderFromM[0]! / longestM - ROUNDING_M))
    const leastM = totalM + wasteM * splices
    const counts = leastLength(usable, splices + groups, leastM)
    return { splices, spools: splices + groups, lengthM: counts ? lengthOf(usable, counts) : leastM }
  }

  /** Ways to lay a run that add at most `most` splices; without `most`, those that add the fewest. */
  function movesFor(state: State, depth: number, most: number | undefined): Move[] {
    const needM = needsM[order[depth]!]!
    const before = order[depth - 1]
    // Runs of one length are alike: the later goes into no group before that of the earlier.
    const first =
      before !== undefined && needsM[before] === needM
        ? state.open.findIndex((group) => group.runs.includes(before))
        : 0
    const places = [...state.open.slice(first), undefined].map((group, i) => {
      const missingM = needM - (group ? group.restM : wasteM)
      const ownEnd = group ? 0 : 1
      const spools = Math.max(ownEnd, fewestSpools(state.stock, wasteM, missingM))
      return { at: first + i, missingM, ownEnd, spools }
    })
    const limit = most ?? Math.min(...places.map(({ spools, ownEnd }) => spools - ownEnd))
    const moves: Move[] = []
    for (const { at, missingM, ownEnd, spools: fewest } of places) {
      for (let spools = fewest; spools <= limit + ownEnd && spools < Number.POSITIVE_INFINITY; spools++) {
        const sets = minimalSets(state.stock, spools, missingM, wasteM)
        if (sets.length >= SETS) isWhole = false
        for (const added of sets) {
          const restM = lengthOf(kinds, added) - spools * wasteM - missingM
          moves.push({ at, added, spools, splices: spools - ownEnd, restM })
        }
        if (spools === 0) break
      }
    }
    return moves
  }

  function put(state: State, depth: number, move: Move): State {
    const run = order[depth]!
    const group = state.open[move.at]
    const grown: Open = {
      runs: [...(group?.runs ?? []), run],
      counts: move.added.map((n, k) => n + (group?.counts[k] ?? 0)),
      needM: needsM[run]! + (group?.needM ?? 0),
      restM: move.restM,
    }
    return {
      open: group ? state.open.with(move.at, grown) : [...state.open, grown],
      stock: state.stock.map(({ lengthM, count }, k) => ({ lengthM, count: count - move.added[k]! })),
      splices: state.splices + move.splices,
      spools: state.spools + move.spools,
    }
  }

  function settle(state: State): void {
    const groups = shortened(state, usable, wasteM)
    const lengthM = total(groups.flatMap((group) => group.spoolsM))
    const cost = { splices: state.splices, spools: state.spools, lengthM }
    if ((!best || isLess(cost, best.cost)) && groups.every(isCuttable)) best = { groups, cost }
  }

  /** All runs on one chain of the longest spools: never good, but there wherever the spools reach. */
  function chain(): void {
    const spools = Math.max(1, fewestSpools(kinds, wasteM, totalM - wasteM))
    const counts: number[] = []
    for (const { count } of kinds) counts.push(Math.min(count, spools - total(counts)))
    const restM = lengthOf(kinds, counts) - wasteM * (spools - 1) - totalM
    const stock = kinds.map(({ lengthM, count }, k) => ({ lengthM, count: count - counts[k]! }))
    settle({ open: [{ runs: order, counts, needM: totalM, restM }], stock, splices: spools - 1, spools })
  }

  /** One way down, the cheapest move at each run, without looking back. */
  function dive(longestFirst: boolean): void {
    let state = empty
    for (const depth of order.keys()) {
      const [move] = movesFor(state, depth, undefined).sort(byCost(longestFirst))
      if (!move) return
      state = put(state, depth, move)
    }
    settle(state)
  }

  /** Whether nothing below this state can beat the best. */
  function isHopeless(state: State, depth: number): boolean {
    if (!best) return false
    const splices = state.splices + splicesFrom[depth]!
    if (splices !== best.cost.splices) return splices > best.cost.splices
    const restM = total(state.open.map((group) => group.restM))
    const newGroups = Math.max(0, Math.ceil((remainderFromM[depth]! - restM) / longest!.lengthM - ROUNDING_M))
    const spools = splices + state.open.length + newGroups
    if (spools !== best.cost.spools) return spools > best.cost.spools
    return best.cost.lengthM <= totalM + wasteM * splices + ROUNDING_M
  }

  /** Returns whether the whole tree below was looked through. */
  function search(state: State, depth: number): boolean {
    if (best && !isLess(bound, best.cost)) return true
    if (isHopeless(state, depth)) return true
    if (depth === order.length) {
      settle(state)
      return true
    }
    const most = best && best.cost.splices - state.splices - splicesFrom[depth + 1]!
    const moves = movesFor(state, depth, most).sort(byCost(true))
    for (const move of moves) {
      if (--trialsLeft < 0) return false
      if (!search(put(state, depth, move), depth + 1)) return false
    }
    return true
  }

  chain()
  dive(true)
  if (!atWill) dive(false)
  isWhole = true
  const ended = search(empty, 0) && isWhole
  return best && { ...best, bound: ended ? best.cost : bound }
}
