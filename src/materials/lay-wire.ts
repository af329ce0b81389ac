import type { WireStretch } from '../measure/crossing-wire'
import type { LineId } from '../plan/id'
import { type Cut, cutGroup, type Run } from './cut-runs'
import { MOST_RUNS, MOST_SPOOLS, packSpools } from './pack-spools'
import type { Group, Packing } from './packing'
import {
  fewestSpools,
  leastLength,
  longestChainM,
  ROUNDING_M,
  type SpoolKind,
  total,
  usableKinds,
} from './spool-kinds'
import type { Piece, WireSpools } from './spool-plan'

/** What the lines ask of one wire, and the spools that there are. */
export interface WantedWire {
  readonly wire: string
  readonly kgPerKm: number
  readonly kinds: readonly SpoolKind[]
  readonly wasteM: number
  readonly reservePct: number
  readonly lines: readonly WantedLine[]
}

interface WantedLine {
  readonly id: LineId
  readonly wireM: number
  readonly pairs: number
  readonly avoid: readonly WireStretch[]
}

type NumberedPiece = Omit<Piece, 'spool'> & { readonly spool: number }
type UsedSpool = Omit<WireSpools['used'][number], 'spool'>

/** The spools of one wire, numbered from 0 in the order in which the lines first meet them. */
export interface LaidWire {
  readonly figures: Omit<WireSpools, 'used'>
  readonly used: readonly UsedSpool[]
  readonly pieces: ReadonlyMap<LineId, readonly NumberedPiece[]>
}

/** One pair of one line. */
interface PairRun extends Run {
  readonly line: LineId
  readonly pair: number
}

/** Spools taken in hand, and the pieces cut from them by the spool's place in the list. */
interface Cutting {
  readonly spools: { readonly lengthM: number; readonly leftM: number }[]
  readonly cuts: { readonly run: PairRun; readonly cut: Cut }[]
}

/** Lays every line of one wire: shares out the spools, cuts them, and counts what is carried. */
export function layWire(wanted: WantedWire): LaidWire {
  const { runs, packing } = packWholeLines(wanted)
  const cutting = cutAll(runs, packing, wanted.wasteM)
  const whole = new Set(runs.map((run) => run.line))
  const notLaid = wanted.lines.filter((line) => !whole.has(line.id) && runsOf([line]).length > 0)
  beginLines(notLaid, wanted, cutting)

  const pieces = new Map<LineId, NumberedPiece[]>(wanted.lines.map((line) => [line.id, []]))
  for (const { run, cut } of cutting.cuts) {
    pieces.get(run.line)!.push({ spool: cut.spool, wireM: cut.wireM, pair: run.pair, cutM: cut.cutM })
  }
  const numberOf = new Map<number, number>()
  for (const [line, own] of pieces) {
    own.sort((a, b) => a.pair - b.pair)
    for (const { spool } of own) if (!numberOf.has(spool)) numberOf.set(spool, numberOf.size)
    pieces.set(
      line,
      own.map((piece) => ({ ...piece, spool: numberOf.get(piece.spool)! })),
    )
  }
  const used = [...numberOf.keys()].map((spool) => cutting.spools[spool]!)
  const pairsLaid = new Set(cutting.cuts.map(({ run }) => run)).size
  const splices = cutting.cuts.length - pairsLaid
  return { figures: figuresOf(wanted, packing, used, splices, notLaid), used, pieces }
}

const runsOf = (lines: readonly WantedLine[]): PairRun[] =>
  lines
    .filter((line) => line.wireM > ROUNDING_M)
    .flatMap(({ id, wireM, pairs, avoid }) =>
      Array.from({ length: pairs }, (_, pair) => ({ line: id, pair, needM: wireM, avoid })),
    )

function pack(runs: readonly PairRun[], { kinds, wasteM }: WantedWire): Packing | undefined {
  const isCuttable = (group: Group) => cutGroup(runs, group.runs, group.spoolsM, wasteM) !== undefined
  return packSpools({ needsM: runs.map((run) => run.needM), kinds, wasteM, isCuttable })
}

/** All lines; or where the spools do not reach, as many whole ones as they reach for, the shortest first. */
function packWholeLines(wanted: WantedWire): {
  readonly runs: readonly PairRun[]
  readonly packing: Packing
} {
  const all = runsOf(wanted.lines)
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

function cutAll(runs: readonly PairRun[], packing: Packing, wasteM: number): Cutting {
  const cutting: Cutting = { spools: [], cuts: [] }
  for (const group of packing.groups) {
    const { cuts, leftM } = cutGroup(runs, group.runs, group.spoolsM, wasteM)!
    const first = cutting.spools.length
    for (const [i, lengthM] of group.spoolsM.entries()) cutting.spools.push({ lengthM, leftM: leftM[i]! })
    for (const cut of cuts) {
      cutting.cuts.push({ run: runs[cut.run]!, cut: { ...cut, spool: first + cut.spool } })
    }
  }
  return cutting
}

/** Kinds with what is left of them when some spools are taken. */
function without(kinds: readonly SpoolKind[], takenM: readonly number[]): readonly SpoolKind[] {
  const taken = new Map<number, number>()
  for (const lengthM of takenM) taken.set(lengthM, (taken.get(lengthM) ?? 0) + 1)
  return usableKinds(kinds, 0).map(({ lengthM, count }) => ({
    lengthM,
    count: count - (taken.get(lengthM) ?? 0),
  }))
}

/** Lays untouched spools along lines that cannot be laid whole, from their start, as far as they go. */
function beginLines(lines: readonly WantedLine[], { kinds, wasteM }: WantedWire, cutting: Cutting): void {
  if (lines.length === 0) return
  const taken = cutting.spools.map((spool) => spool.lengthM)
  const spare = without(usableKinds(kinds, wasteM), taken)
  const untouchedM = spare.flatMap(({ lengthM, count }) =>
    new Array<number>(Math.min(count, MOST_SPOOLS)).fill(lengthM),
  )
  let next = 0
  for (const run of runsOf(lines)) {
    let doneM = 0
    while (doneM < run.needM - ROUNDING_M && next < untouchedM.length) {
      const lengthM = untouchedM[next++]!
      const startM = doneM > 0 ? wasteM / 2 : 0
      const ends = run.needM - doneM + startM <= lengthM + ROUNDING_M
      const endM = ends || next === untouchedM.length ? 0 : wasteM / 2
      const wireM = ends ? run.needM - doneM : lengthM - startM - endM
      const cutM = wireM + startM + endM
      cutting.cuts.push({ run, cut: { run: 0, spool: cutting.spools.length, wireM, cutM } })
      cutting.spools.push({ lengthM, leftM: Math.max(0, lengthM - cutM) })
      doneM += wireM
    }
  }
}

function figuresOf(
  wanted: WantedWire,
  packing: Packing,
  used: readonly UsedSpool[],
  splices: number,
  notLaid: readonly WantedLine[],
): LaidWire['figures'] {
  const { kinds, wasteM, reservePct, kgPerKm } = wanted
  const planM = total(wanted.lines.map((line) => line.wireM * line.pairs))
  const neededM = planM * (1 + reservePct / 100) + wasteM * splices
  const usedM = used.map((spool) => spool.lengthM)
  const usedOnes = usedM.map((lengthM) => ({ lengthM, count: 1 }))
  const carry = usableKinds([...usedOnes, ...besides(without(kinds, usedM), neededM - total(usedM))], 0)
  const carriedM = total(carry.map(({ lengthM, count }) => lengthM * count))
  const shortM = Math.max(neededM - carriedM, notLaid.length > 0 ? planM - longestChainM(kinds, wasteM) : 0)
  const { bound } = packing
  const lacking = new Set(notLaid)
  const wholeM = total(
    wanted.lines.filter((line) => !lacking.has(line)).map((line) => line.wireM * line.pairs),
  )
  return {
    wire: wanted.wire,
    neededM,
    carry,
    splices,
    leftM: total(used.map((spool) => spool.leftM)),
    kg: (carriedM / 1000) * kgPerKm,
    missingM: shortM > ROUNDING_M ? shortM : 0,
    notLaid: notLaid.map((line) => line.id),
    bound: {
      splices: bound.splices,
      spools: bound.spools,
      leftM: Math.max(0, bound.lengthM - wholeM - wasteM * bound.splices),
    },
  }
}

/** The fewest further spools, and of those the shortest, that make up what is short; all there are where they do not. */
function besides(kinds: readonly SpoolKind[], shortM: number): readonly SpoolKind[] {
  const howMany = fewestSpools(kinds, 0, shortM)
  if (!Number.isFinite(howMany)) return kinds
  const counts = leastLength(kinds, howMany, shortM).found
  return kinds.map(({ lengthM }, k) => ({ lengthM, count: counts?.[k] ?? 0 }))
}
