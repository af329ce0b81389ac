import { foundFor, isSame, joined } from '../memo'
import { type Cut, cutGroup } from './cut-runs'
import { MOST_RUNS, MOST_SPOOLS, packSpools } from './pack-spools'
import type { Group, Packing } from './packing'
import { countsByLength, longestChainM, ROUNDING_M, usableKinds } from './spool-kinds'
import type { WireSpools } from './spool-plan'
import type { PairRun, WantedLine, WantedWire } from './wanted-wire'
import { figuresOf, type UsedSpool, without } from './wire-figures'

/** What one run is cut into, from its start to its end: the spools of its cuts are counted from `first` on among all that were taken in hand. */
interface CutRun {
  readonly first: number
  readonly cuts: readonly Pick<Cut, 'spool' | 'wireM' | 'cutM'>[]
}

/** Spools taken in hand, and what is cut from them for each run, in the order of the runs. */
interface Cutting {
  readonly spools: UsedSpool[]
  readonly cuts: (CutRun | undefined)[]
}

/** The spools of one wire, in the order in which the lines first meet them, and what each run is cut into. */
export interface LaidWire {
  readonly figures: Omit<WireSpools, 'used'>
  readonly used: readonly UsedSpool[]
  /** Of all runs of the lines, one after the other. */
  readonly cuts: readonly (CutRun | undefined)[]
  /** The place among `used` of each spool that was taken in hand. */
  readonly placeOf: Int32Array
}

/** Lays every line of one wire: shares out the spools, cuts them, and counts what is carried. */
export function layWire(wanted: WantedWire): LaidWire {
  const all = runsOf(wanted.lines)
  const { runs, packing } = packWholeLines(wanted, all)
  let cutting = cutAll(runs, packing)
  let notLaid: readonly WantedLine[] = []
  if (runs !== all) {
    const whole = new Set(runs.map((run) => run.line))
    notLaid = wanted.lines.filter((line) => !whole.has(line.id) && line.runs.length > 0)
    cutting = beginLines(
      notLaid,
      wanted,
      { spools: cutting.spools, cuts: inOrderOf(all, runs, cutting.cuts) },
      all,
    )
  }

  const used: UsedSpool[] = []
  const placeOf = new Int32Array(cutting.spools.length).fill(-1)
  let splices = 0
  for (const own of cutting.cuts) {
    if (!own) continue
    splices += own.cuts.length - 1
    for (const { spool } of own.cuts) {
      const at = own.first + spool
      if (placeOf[at] === -1) placeOf[at] = used.push(cutting.spools[at]!) - 1
    }
  }
  const figures = figuresOf(wanted, packing, used, splices, notLaid)
  return { figures, used, cuts: cutting.cuts, placeOf }
}

const runsOf = (lines: readonly WantedLine[]): readonly PairRun[] => joined(lines.map((line) => line.runs))

/** What stands beside some runs, beside all of them. */
function inOrderOf<T>(
  all: readonly PairRun[],
  some: readonly PairRun[],
  beside: readonly T[],
): (T | undefined)[] {
  const of = new Map(some.map((run, place) => [run, beside[place]]))
  return all.map((run) => of.get(run))
}

/** A group cut from its spools: what each of its runs is cut into, and the spools with what is left on them. */
interface CutOfGroup {
  readonly ofRuns: readonly CutRun['cuts'][]
  readonly spools: readonly UsedSpool[]
}

type CutPacking = Packing<CutOfGroup>

/** How each run's group was cut last, by the group's first run. */
const lastCuts = foundFor<
  PairRun,
  {
    readonly runs: readonly PairRun[]
    readonly spoolsM: readonly number[]
    readonly wasteM: number
    readonly cut: CutOfGroup | undefined
  }
>()

/** Runs that lie together as before, on spools as before, are cut as before. */
function cutsOf(runs: readonly PairRun[], group: Group, wasteM: number): CutOfGroup | undefined {
  const first = runs[group.runs[0]!]!
  const before = lastCuts.get(first)
  if (
    before?.wasteM === wasteM &&
    before.runs.length === group.runs.length &&
    before.runs.every((run, i) => run === runs[group.runs[i]!]) &&
    isSame(before.spoolsM, group.spoolsM)
  )
    return before.cut
  const own = group.runs.map((run) => runs[run]!)
  const found = cutGroup(own, [...own.keys()], group.spoolsM, wasteM)
  const cut = found && {
    ofRuns: own.map((_, run) => found.cuts.filter((each) => each.run === run)),
    spools: group.spoolsM.map((lengthM, spool) => ({ lengthM, leftM: found.leftM[spool]! })),
  }
  lastCuts.set(first, { runs: own, spoolsM: group.spoolsM, wasteM, cut })
  return cut
}

const pack = (runs: readonly PairRun[], { kinds, wasteM }: WantedWire): CutPacking | undefined =>
  packSpools({
    needsM: runs.map((run) => run.needM),
    kinds,
    wasteM,
    cut: (group) => cutsOf(runs, group, wasteM),
  })

/** All lines; or where the spools do not reach, as many whole ones as they reach for, the shortest first. */
function packWholeLines(
  wanted: WantedWire,
  all: readonly PairRun[],
): { readonly runs: readonly PairRun[]; readonly packing: CutPacking } {
  const packing = pack(all, wanted)
  if (packing) return { runs: all, packing }
  const reachM = longestChainM(wanted.kinds, wanted.wasteM)
  const chosen: WantedLine[] = []
  const longestM = usableKinds(wanted.kinds, wanted.wasteM)[0]?.lengthM ?? 0
  let sumM = 0
  let pairs = 0
  for (const line of wanted.lines.toSorted((a, b) => a.wireM * a.pairs - b.wireM * b.pairs)) {
    sumM += line.wireM * line.pairs
    pairs += line.pairs
    const outOfReach = sumM > reachM || sumM > MOST_SPOOLS * longestM || pairs > MOST_RUNS
    if (outOfReach) break
    chosen.push(line)
  }
  for (; ; chosen.pop()) {
    const runs = runsOf(chosen)
    const packing = pack(runs, wanted)
    if (packing) return { runs, packing }
  }
}

function cutAll(runs: readonly PairRun[], { groups, cuts }: CutPacking): Cutting {
  const cutting: Cutting = { spools: [], cuts: new Array(runs.length) }
  for (const [place, group] of groups.entries()) {
    const { ofRuns, spools } = cuts[place]!
    const first = cutting.spools.length
    for (let run = 0; run < ofRuns.length; run++)
      cutting.cuts[group.runs[run]!] = { first, cuts: ofRuns[run]! }
    for (const spool of spools) cutting.spools.push(spool)
  }
  return cutting
}

/** Lays untouched spools along lines that cannot be laid whole, from their start, as far as they go. */
function beginLines(
  lines: readonly WantedLine[],
  { kinds, wasteM }: WantedWire,
  cutting: Cutting,
  all: readonly PairRun[],
): Cutting {
  const begun = new Map<PairRun, CutRun>()
  const spare = without(usableKinds(kinds, wasteM), countsByLength(cutting.spools))
  const untouchedM = spare.flatMap(({ lengthM, count }) =>
    new Array<number>(Math.min(count, MOST_SPOOLS)).fill(lengthM),
  )
  let next = 0
  for (const run of runsOf(lines)) {
    let doneM = 0
    const first = cutting.spools.length
    const cuts: CutRun['cuts'][number][] = []
    while (doneM < run.needM - ROUNDING_M && next < untouchedM.length) {
      const lengthM = untouchedM[next++]!
      const startM = doneM > 0 ? wasteM / 2 : 0
      const ends = run.needM - doneM + startM <= lengthM + ROUNDING_M
      const endM = ends || next === untouchedM.length ? 0 : wasteM / 2
      const wireM = ends ? run.needM - doneM : lengthM - startM - endM
      const cutM = wireM + startM + endM
      cuts.push({ spool: cutting.spools.length - first, wireM, cutM })
      cutting.spools.push({ lengthM, leftM: Math.max(0, lengthM - cutM) })
      doneM += wireM
    }
    if (cuts.length > 0) begun.set(run, { first, cuts })
  }
  return { spools: cutting.spools, cuts: all.map((run, place) => begun.get(run) ?? cutting.cuts[place]) }
}
