import { boundFor, type Cost, isLess, type Packable, type Packing, sumsToEnd } from './packing'
import { fewestSpools, lengthOf, minimalSets, ROUNDING_M, type SpoolKind, total } from './spool-kinds'
import { joined, type SpoolGroup, shortened } from './tidy-groups'

/** Sets of spools looked at for runs after which the best packing so far is taken. Counted, not timed. */
const STEPS = 1500

/** One group while it grows, and the wire left on its spools beyond its runs and splices. */
interface Open extends SpoolGroup {
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

/** Cheapest first; among equals the tightest place for a run that needs no spool, and for added spools what `longest` says. */
const byCost = (longest: boolean) => (a: Move, b: Move) =>
  a.splices - b.splices ||
  a.spools - b.spools ||
  (longest && a.spools > 0 ? b.restM - a.restM : a.restM - b.restM) ||
  a.at - b.at

/**
 * Fewer splices than this cannot be.
 *
 * For every length t: a spool holds ⌊l/t⌋ whole lengths of t, a run has ⌊w/t⌋ of them, and a splice spoils at most one; so the
 * splices are at least Σ⌊w/t⌋ − Σ⌊l/t⌋. And each run needs what it would need alone on the longest spools.
 */
function fewestSplices(needsM: readonly number[], kinds: readonly SpoolKind[], alone: number): number {
  let most = alone
  for (const unitM of new Set(needsM)) {
    const whole = (lengthM: number) => Math.floor(lengthM / unitM + ROUNDING_M)
    const inRuns = total(needsM.map(whole))
    const onSpools = total(kinds.map(({ lengthM, count }) => count * whole(lengthM)))
    most = Math.max(most, inRuns - onSpools)
  }
  return most
}

/**
 * Shares out a stock of spools.
 *
 * splices = spools − groups. A depth-first branch and bound takes the runs, longest first, and lays each in an open group or in a
 * new one, with every minimal set of spools added that it may need there; it starts from three quick packings. Exact where it
 * ends within its steps; where it does not, `bound` tells how far the packing may be from the best.
 *
 * @returns undefined where none of the packings can be cut
 */
export function packStock<C>({ needsM, kinds, wasteM, cut }: Packable<C>): Packing<C> | undefined {
  const longestM = kinds[0]!.lengthM
  const wireM = total(needsM)
  const splicesOf = needsM.map((needM) => Math.max(1, fewestSpools(kinds, wasteM, needM - wasteM)) - 1)
  const remainderM = needsM.map((needM, run) => needM - splicesOf[run]! * (longestM - wasteM))
  const order = needsM.map((_, run) => run).sort((a, b) => needsM[b]! - needsM[a]! || a - b)
  const splicesFrom = sumsToEnd(order, splicesOf)
  const remainderFromM = sumsToEnd(order, remainderM)
  const empty: State = { open: [], stock: kinds, splices: 0, spools: 0 }
  const bound = lowerBound()
  let best: Omit<Packing<C>, 'bound'> | undefined
  let steps = 0
  let isWhole = true

  function lowerBound(): Cost {
    const splices = fewestSplices(needsM, kinds, splicesFrom[0]!)
    const groups =
      splices === splicesFrom[0] ? Math.max(1, Math.ceil(remainderFromM[0]! / longestM - ROUNDING_M)) : 1
    const spools = Math.max(splices + groups, fewestSpools(kinds, 0, wireM + wasteM * splices))
    return boundFor(kinds, splices, spools, wireM, wasteM)
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
    const placeAt = (at: number) => {
      const group = state.open[at]
      const missingM = needM - (group ? group.restM : wasteM)
      const ownEnd = group ? 0 : 1
      return { at, missingM, ownEnd, spools: Math.max(ownEnd, fewestSpools(state.stock, wasteM, missingM)) }
    }
    const places = []
    for (let at = first; at <= state.open.length; at++) places.push(placeAt(at))
    const limit =
      most ?? places.reduce((least, { spools, ownEnd }) => Math.min(least, spools - ownEnd), Infinity)
    const moves: Move[] = []
    for (const { at, missingM, ownEnd, spools: fewest } of places) {
      for (let spools = fewest; spools <= limit + ownEnd && Number.isFinite(spools); spools++) {
        const sets = minimalSets(state.stock, spools, missingM, wasteM)
        steps += sets.found.length
        isWhole &&= sets.isWhole
        for (const added of sets.found) {
          const restM = lengthOf(kinds, added) - spools * wasteM - missingM
          moves.push({ at, added, spools, splices: spools - ownEnd, restM })
        }
        if (spools === 0 || steps > STEPS) break
      }
    }
    return moves
  }

  function put(state: State, depth: number, move: Move): State {
    const run = order[depth]!
    const group = state.open[move.at]
    const grown: Open = {
      runs: group ? [...group.runs, run] : [run],
      counts: group ? move.added.map((n, k) => n + group.counts[k]!) : move.added,
      needM: needsM[run]! + (group?.needM ?? 0),
      restM: move.restM,
    }
    return {
      open: group ? state.open.with(move.at, grown) : [...state.open, grown],
      stock:
        move.spools === 0
          ? state.stock
          : state.stock.map((kind, k) =>
              move.added[k] ? { lengthM: kind.lengthM, count: kind.count - move.added[k]! } : kind,
            ),
      splices: state.splices + move.splices,
      spools: state.spools + move.spools,
    }
  }

  function settle(state: State): void {
    const { groups: fewer, stock } = joined(state.open, state.stock, wasteM)
    const groups = shortened(fewer, stock, wasteM)
    const cost = {
      splices: state.splices,
      spools: state.spools - (state.open.length - groups.length),
      lengthM: total(groups.flatMap((group) => group.spoolsM)),
    }
    if (best && !isLess(cost, best.cost)) return
    const cuts = groups.map(cut)
    if (cuts.every((own) => own !== undefined)) best = { groups, cuts, cost }
  }

  /** All runs on one chain of the longest spools: never good, but there wherever the spools reach. */
  function chain(): void {
    const spools = Math.max(1, fewestSpools(kinds, wasteM, wireM - wasteM))
    const counts: number[] = []
    for (const { count } of kinds) counts.push(Math.min(count, spools - total(counts)))
    const restM = lengthOf(kinds, counts) - wasteM * (spools - 1) - wireM
    const stock = kinds.map(({ lengthM, count }, k) => ({ lengthM, count: count - counts[k]! }))
    settle({ open: [{ runs: order, counts, needM: wireM, restM }], stock, splices: spools - 1, spools })
  }

  /** One way down, the cheapest move at each run, without looking back. */
  function dive(longestFirst: boolean): void {
    const cheaper = byCost(longestFirst)
    let state = empty
    for (const depth of order.keys()) {
      steps = 0
      const moves = movesFor(state, depth, undefined)
      if (moves.length === 0) return
      state = put(
        state,
        depth,
        moves.reduce((a, b) => (cheaper(b, a) < 0 ? b : a)),
      )
    }
    settle(state)
  }

  /** Whether nothing below this state can beat the best. */
  function isHopeless(state: State, depth: number): boolean {
    if (!best) return false
    const splices = state.splices + splicesFrom[depth]!
    if (splices !== best.cost.splices) return splices > best.cost.splices
    const restM = total(state.open.map((group) => group.restM))
    const newGroups = Math.max(0, Math.ceil((remainderFromM[depth]! - restM) / longestM - ROUNDING_M))
    const spools = splices + state.open.length + newGroups
    if (spools !== best.cost.spools) return spools > best.cost.spools
    return best.cost.lengthM <= wireM + wasteM * splices + ROUNDING_M
  }

  /** Looks through everything below a state that may beat the best; false where the steps ran out. */
  function search(state: State, depth: number): boolean {
    if ((best && !isLess(bound, best.cost)) || isHopeless(state, depth)) return true
    if (depth === order.length) {
      settle(state)
      return true
    }
    const most = best && best.cost.splices - state.splices - splicesFrom[depth + 1]!
    for (const move of movesFor(state, depth, most).sort(byCost(true))) {
      if (++steps > STEPS) return false
      if (!search(put(state, depth, move), depth + 1)) return false
    }
    return steps <= STEPS
  }

  chain()
  dive(true)
  dive(false)
  steps = 0
  isWhole = true
  const ended = search(empty, 0) && isWhole
  return best && { ...best, bound: ended ? best.cost : bound }
}
