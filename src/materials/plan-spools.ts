import type { Catalog } from '../catalog/catalog'
import type { Wire } from '../catalog/wire'
import type { MeasuredLine } from '../measure/measured'
import { foundFor, isSame, memoryOfEach, memoryOfRow } from '../memo'
import type { LineId } from '../plan/id'
import { inRow, lineRowOf } from '../plan/line-row'
import type { Line, Plan } from '../plan/plan'
import { carriedLengthsM } from './carried-spools'
import { type LaidWire, layWire } from './lay-wire'
import { splicesToAvoid } from './splice-limits'
import type { Piece, SpoolPlan, WireSpools } from './spool-plan'
import { type WantedLine, wantedLine } from './wanted-wire'
import { layingOf, loadAllowancesOf } from './work-allowances'

/** What was laid last for a wire, and everything that it followed from: where all of it is the same, so is the answer. */
const remembered = foundFor<
  Wire,
  { readonly from: readonly unknown[]; readonly wanted: readonly WantedLine[]; readonly laid: LaidWire }[]
>()

const rememberedNames = memoryOfEach<LaidWire, ReturnType<typeof withNames>>()
const rememberedWants = memoryOfEach<MeasuredLine, WantedLine>()
const rememberedRow = memoryOfRow<Line, WantedLine>()

/** What each line was last cut into: one that is cut as before keeps its very list of pieces, though all spools were shared out anew. */
const lastPieces = foundFor<MeasuredLine, readonly Piece[]>()

/** From so many lines of one wire on a drag does not share out its spools anew: below, it is done within a millisecond. */
const LARGE_GROUP = 60
const NONE: readonly Piece[] = []

interface Laid {
  readonly laid: LaidWire
  readonly measured: ReadonlyMap<LineId, MeasuredLine>
}
/** What each plan was laid with, by wire. */
const laidFor = foundFor<Plan, ReadonlyMap<string, Laid>>()

/** How many answers are kept for one wire: enough for a drag and for the plans that remedies try beside it. */
const KEPT = 8

/**
 * The spools of each wire and the pieces of each line.
 *
 * Each pair of a line takes its `wireM`, in pieces end to end; a splice between two pieces uses `spliceWasteM` besides, half of it
 * off either piece. The fewest splices, then the fewest spools, then the least left over: see `packSpools`. A plan with no stock
 * draws on any number of the wire's standard spools; with a stock, the stock is all there is, for every wire.
 *
 * Where the stock is too short, as many lines as can be are laid whole, the shortest first; spools still untouched then begin
 * the others, in the plan's order.
 *
 * @param settled while a hand drags, the plan from before: a large group keeps its spools and says so, and a line that moves has no pieces
 */
export function planSpools(
  plan: Plan,
  catalog: Catalog,
  measured: ReadonlyMap<LineId, MeasuredLine>,
  settled?: Plan,
): SpoolPlan {
  const spools: WireSpools[] = []
  const pieces = new Map<LineId, readonly Piece[]>()
  const now = new Map<string, Laid>()
  let before = 0
  for (const [wire, wanted] of wantedByWire(plan, measured)) {
    const kept = wanted.length >= LARGE_GROUP ? spoolsOf(settled, wire) : undefined
    const laid = kept?.laid ?? layOnce(plan, catalog, wire, wanted)
    const firstId = before + 1
    before += laid.used.length
    const named = rememberedNames(laid, [firstId], () => withNames(laid, firstId, wanted, measured))
    now.set(wire, { laid, measured })
    spools.push(kept ? { ...named.spools, isFromBefore: true } : named.spools)
    for (let place = 0; place < wanted.length; place++) {
      const { id } = wanted[place]!
      const isMoved = kept && kept.measured.get(id) !== measured.get(id)
      pieces.set(id, isMoved ? NONE : named.pieces[place]!)
    }
  }
  if (!settled) laidFor.set(plan, now)
  return { spools, pieces }
}

const spoolsOf = (settled: Plan | undefined, wire: string) => settled && laidFor.get(settled)?.get(wire)

/** Names of spools by their number: there is no end of asking for them. */
const IDS: string[] = []

/** Spools are numbered through the whole plan, so a wire's own change with those of the wires before it. */
function withNames(
  laid: LaidWire,
  firstId: number,
  wanted: readonly WantedLine[],
  measured: ReadonlyMap<LineId, MeasuredLine>,
) {
  while (IDS.length < firstId + laid.used.length) IDS.push(`s${IDS.length}`)
  const ids = IDS.slice(firstId, firstId + laid.used.length)
  let firstRun = 0
  const pieces = wanted.map((line): readonly Piece[] => {
    const length = measured.get(line.id)!
    const before = lastPieces.get(length)
    const own =
      before && isCutSo(before, line, firstRun, laid, ids) ? before : piecesOf(line, firstRun, laid, ids)
    if (own !== before) lastPieces.set(length, own)
    firstRun += line.runs.length
    return own.length > 0 ? own : NONE
  })
  return {
    spools: {
      ...laid.figures,
      used: laid.used.map(({ lengthM, leftM }, place) => ({ spool: ids[place]!, lengthM, leftM })),
    },
    pieces,
  }
}

/** @param firstRun which of all runs of the wire is the line's first */
function piecesOf(
  line: WantedLine,
  firstRun: number,
  { cuts, placeOf }: LaidWire,
  ids: readonly string[],
): readonly Piece[] {
  return line.runs.flatMap((run, k) => {
    const own = cuts[firstRun + k]
    return (own?.cuts ?? []).map(({ spool, wireM, cutM }) => ({
      spool: ids[placeOf[own!.first + spool]!]!,
      wireM,
      pair: run.pair,
      cutM,
    }))
  })
}

function isCutSo(
  pieces: readonly Piece[],
  line: WantedLine,
  firstRun: number,
  { cuts, placeOf }: LaidWire,
  ids: readonly string[],
): boolean {
  let at = 0
  for (let k = 0; k < line.runs.length; k++) {
    const run = line.runs[k]!
    const own = cuts[firstRun + k]
    if (!own) continue
    for (const { spool, wireM, cutM } of own.cuts) {
      const piece = pieces[at++]
      if (piece?.wireM !== wireM || piece.cutM !== cutM || piece.pair !== run.pair) return false
      if (piece.spool !== ids[placeOf[own.first + spool]!]) return false
    }
  }
  return at === pieces.length
}

/** What each line asks for, wire by wire. */
function wantedByWire(
  plan: Plan,
  measured: ReadonlyMap<LineId, MeasuredLine>,
): ReadonlyMap<string, readonly WantedLine[]> {
  const { lines } = lineRowOf(plan)
  const lengths = inRow(lines, measured)
  const row = rememberedRow(lines, [plan.hazards], [lengths], (line, place) => {
    const { id, pairs } = line
    const length = lengths[place]!
    const avoid = splicesToAvoid(plan, line, length)
    return rememberedWants(length, [pairs, avoid], () => wantedLine(id, length.wireM, pairs, avoid))
  })
  const byWire = new Map<string, WantedLine[]>()
  for (let place = 0; place < lines.length; place++) {
    const { wire } = lines[place]!
    const wanted = byWire.get(wire)
    if (wanted) wanted.push(row[place]!)
    else byWire.set(wire, [row[place]!])
  }
  return byWire
}

function layOnce(plan: Plan, catalog: Catalog, wire: string, wanted: readonly WantedLine[]): LaidWire {
  const entry = catalog.wires.get(wire)
  const { spliceWasteM, reservePct } = plan.allowances
  const { perPersonKg, reelPct } = loadAllowancesOf(plan)
  const crew = layingOf(plan).people
  const carried = plan.stock.length === 0 ? [perPersonKg, reelPct, crew] : []
  const from = [entry, plan.stock, ...carried, spliceWasteM, reservePct]
  const kept = (entry && remembered.get(entry)) ?? []
  const known = kept.find((one) => isSame(one.from, from) && isSame(one.wanted, wanted))
  if (known) return known.laid

  const lengthsM = entry ? carriedLengthsM(entry, { perPersonKg, reelPct, crew }) : []
  const standard = lengthsM.map((lengthM) => ({ lengthM, count: Number.POSITIVE_INFINITY }))
  const laid = layWire({
    wire,
    kgPerKm: entry?.kgPerKm ?? 0,
    kinds: plan.stock.length === 0 ? standard : plan.stock.filter((spool) => spool.wire === wire),
    wasteM: spliceWasteM,
    reservePct,
    lines: wanted,
  })
  if (entry) remembered.set(entry, [{ from, wanted, laid }, ...kept].slice(0, KEPT))
  return laid
}
