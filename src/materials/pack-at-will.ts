import { fewestBins } from './bin-bound'
import { boundFor, type Group, isLess, type Packable, type Packing, spoolList, sumsToEnd } from './packing'
import { fewestSpools, leastLength, ROUNDING_M, total } from './spool-kinds'

/** Places looked at for runs after which the best packing so far is taken. Counted, not timed. */
const STEPS = 1500
/** What it takes to find the spools of one group, in the same steps. */
const SETTLING = 10
/** With more runs than this the steps would not get far in looking for shorter spools. */
const FEW_RUNS = 40
/** Sets of runs looked at to fill one bin, and to fill all of them. */
const FILLS = 300
const ALL_FILLS = 3000

/**
 * Shares out spools that can be had at will.
 *
 * splices = spools − groups, and each run alone on the longest spools has the fewest splices; so the fewest spools are the
 * fewest groups. A run then takes whole spools of the longest kind, and its remainder is packed with those of others into bins of
 * one spool: bin packing, NP-hard, the whole of the hard part. Best fit first, then each bin filled as tightly as can
 * be, then a depth-first branch and bound as far as the steps go; of packings with equally many bins the one whose groups do with
 * the shortest spools is kept.
 */
export function packAtWill<C>({ needsM, kinds, wasteM, cut }: Packable<C>): Packing<C> | undefined {
  const longestM = kinds[0]!.lengthM
  const netM = longestM - wasteM
  const wireM = total(needsM)
  const splicesOf = needsM.map((needM) => Math.max(1, fewestSpools(kinds, wasteM, needM - wasteM)) - 1)
  const remainderM = needsM.map((needM, run) => needM - splicesOf[run]! * netM)
  const order = needsM.map((_, run) => run).sort((a, b) => remainderM[b]! - remainderM[a]! || a - b)
  const fromM = sumsToEnd(order, remainderM)
  const splices = total(splicesOf)
  const bestFitting = bestFit(order, remainderM, longestM)
  const leastBins = fewestBins(remainderM, longestM, bestFitting.length)
  const bound = boundFor(kinds, splices, splices + leastBins, wireM, wasteM)
  let best: Omit<Packing<C>, 'bound'> | undefined
  let steps = 0

  const alone = kinds.map(({ lengthM }) => [lengthM])
  /** The shortest spools for the runs of one bin. */
  const groupOf = (runs: readonly number[]): Group => {
    let spools = 1
    let binM = 0
    for (const run of runs) {
      spools += splicesOf[run]!
      binM += needsM[run]!
    }
    if (spools === 1) {
      const shortest = kinds.findLastIndex(({ lengthM }) => lengthM >= binM - ROUNDING_M)
      return { runs, spoolsM: alone[Math.max(0, shortest)]! }
    }
    const counts = leastLength(kinds, spools, binM + wasteM * (spools - 1)).found
    const spoolsM = counts ? spoolList(kinds, counts) : new Array<number>(spools).fill(longestM)
    return { runs, spoolsM }
  }
  const known = new Map<string, Group>()
  /** In a search the same bins come again and again. */
  const knownGroupOf = (runs: readonly number[]): Group => {
    const key = runs.join()
    const group = known.get(key) ?? groupOf(runs)
    known.set(key, group)
    return group
  }

  const settle = (bins: readonly (readonly number[])[], spoolsOf = groupOf): void => {
    steps += bins.length * SETTLING
    const groups = bins.map(spoolsOf)
    let lengthM = 0
    for (const group of groups) lengthM += total(group.spoolsM)
    const cost = { splices, spools: splices + bins.length, lengthM }
    if (best && !isLess(cost, best.cost)) return
    const cuts = groups.map(cut)
    if (cuts.every((own) => own !== undefined)) best = { groups, cuts, cost }
  }
  const isBest = () => best !== undefined && !isLess(bound, best.cost)

  settle(bestFitting)
  const isFewest = () => best !== undefined && best.cost.spools === bound.spools
  const isSmall = needsM.length <= FEW_RUNS
  if (!isBest() && (isSmall || !isFewest())) {
    const bins = tightFill(order, remainderM, longestM, best ? best.cost.spools - splices : needsM.length)
    if (bins) settle(bins)
  }
  if (!best) settle(needsM.map((_, run) => [run]))

  const bins: number[][] = []
  const restM: number[] = []
  steps = 0
  /** Puts the runs from `depth` on into bins in every way that may save a bin, or `length`; false where the steps ran out. */
  const search = (depth: number, freeM: number, saves: 'bins' | 'length'): boolean => {
    if (isBest()) return true
    const least = bins.length + Math.max(0, Math.ceil((fromM[depth]! - freeM) / longestM - ROUNDING_M))
    const most = best ? best.cost.spools - splices : bins.length + needsM.length
    if (least > most || (least === most && saves === 'bins')) return true
    if (depth === order.length) {
      settle(
        bins.map((runs) => [...runs]),
        knownGroupOf,
      )
      return true
    }
    const run = order[depth]!
    const sizeM = remainderM[run]!
    const tried = new Set<number>()
    for (let bin = 0; bin < bins.length; bin++) {
      if (++steps > STEPS) return false
      const roomM = restM[bin]!
      if (roomM < sizeM - ROUNDING_M || tried.has(roomM)) continue
      // Bins with the same room are alike as to bins; as to length the runs already in them matter too.
      if (saves === 'bins') tried.add(roomM)
      bins[bin]!.push(run)
      restM[bin] = roomM - sizeM
      const ended = search(depth + 1, freeM - sizeM, saves)
      bins[bin]!.pop()
      restM[bin] = roomM
      if (!ended) return false
    }
    if (++steps > STEPS) return false
    bins.push([run])
    restM.push(longestM - sizeM)
    const ended = search(depth + 1, freeM + longestM - sizeM, saves)
    bins.pop()
    restM.pop()
    return ended
  }
  const fewest = isFewest() || search(0, 0, 'bins')
  steps = 0
  const shortest = fewest && (kinds.length === 1 || (isSmall && search(0, 0, 'length')))
  if (!best) return undefined
  if (shortest) return { ...best, bound: best.cost }
  return { ...best, bound: fewest ? boundFor(kinds, splices, best.cost.spools, wireM, wasteM) : bound }
}

/** Each item into the fullest bin that still takes it, the largest first; of bins equally full into the oldest. */
function bestFit(order: readonly number[], sizesM: readonly number[], roomM: number): number[][] {
  const bins: number[][] = []
  // Bins from the fullest to the emptiest, the older before the younger, and what is left in each.
  const fullest = new Int32Array(order.length)
  const restM = new Float64Array(order.length)
  const placeFor = (leftM: number, bin: number): number => {
    let [from, to] = [0, bins.length]
    while (from < to) {
      const middle = (from + to) >> 1
      const isBefore = restM[middle]! < leftM || (restM[middle]! === leftM && fullest[middle]! < bin)
      if (isBefore) from = middle + 1
      else to = middle
    }
    return from
  }
  for (const item of order) {
    const sizeM = sizesM[item]!
    const at = placeFor(sizeM - ROUNDING_M, -1)
    const isNew = at === bins.length
    const bin = isNew ? bins.length : fullest[at]!
    const leftM = (isNew ? roomM : restM[at]!) - sizeM
    const to = placeFor(leftM, bin)
    fullest.copyWithin(to + 1, to, at)
    restM.copyWithin(to + 1, to, at)
    fullest[to] = bin
    restM[to] = leftM
    if (isNew) bins.push([item])
    else bins[bin]!.push(item)
  }
  return bins
}

/**
 * Bin after bin: the largest item left, and of the others the set that leaves the least room.
 *
 * Source: J. N. D. Gupta, J. C. Ho, A new heuristic algorithm for the one-dimensional bin-packing problem, Production Planning &
 * Control 10 (1999): minimum bin slack.
 *
 * @returns undefined where the steps run out and what is left would take more than `mostBins`
 */
function tightFill(
  order: readonly number[],
  sizesM: readonly number[],
  roomM: number,
  mostBins: number,
): number[][] | undefined {
  const bins: number[][] = []
  let allFills = 0
  let left = [...order]
  while (left.length > 0) {
    // Out of steps, every run would get a bin of its own.
    if (allFills > ALL_FILLS && bins.length + left.length > mostBins) return undefined
    const first = left[0]!
    let best: number[] = []
    let bestM = Number.POSITIVE_INFINITY
    let fills = 0
    const chosen: number[] = []
    /** The first place from `from` on whose run fits: runs lie from the largest to the smallest. */
    const firstFit = (from: number, restM: number): number => {
      let end = left.length
      while (from < end) {
        const middle = (from + end) >> 1
        if (sizesM[left[middle]!]! > restM + ROUNDING_M) from = middle + 1
        else end = middle
      }
      return from
    }
    const fill = (from: number, restM: number): void => {
      if (restM < bestM) {
        best = [...chosen]
        bestM = restM
      }
      for (let i = firstFit(from, restM); i < left.length && bestM > ROUNDING_M; i++) {
        if (++fills > FILLS || ++allFills > ALL_FILLS) return
        chosen.push(i)
        fill(i + 1, restM - sizesM[left[i]!]!)
        chosen.pop()
      }
    }
    fill(1, roomM - sizesM[first]!)
    bins.push([first, ...best.map((i) => left[i]!)])
    const taken = new Set([0, ...best])
    left = left.filter((_, i) => !taken.has(i))
  }
  return bins
}
