import type { Catalog } from '../catalog/catalog'
import type { Wire } from '../catalog/wire'
import type { MeasuredLine } from '../measure/measured'
import { foundFor, isSame, memoryOfEach, memoryOfRow, remembering } from '../memo'
import type { LineId } from '../plan/id'
import { byLine, inRow, lineRowOf } from '../plan/line-row'
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
  const { lines } = lineRowOf(plan)
  const lengths = inRow(lines, measured)
  const spools: WireSpools[] = []
  const pieces = new Array<readonly Piece[]>(lines.length)
  const now = new Map<string, Laid>()
  let before = 0
  const row = wantedRow(plan, lines, lengths)
  for (const [wire, places] of placesByWire(wiresOf(lines, [], [], (line) => line.wire))) {
    const wanted = places.map((place) => row[place]!)
    const kept = wanted.length >= LARGE_GROUP ? spoolsOf(settled, wire) : undefined
    const laid = kept?.laid ?? layOnce(plan, catalog, wire, wanted)
    const firstId = before + 1
    before += laid.used.length
    const named = rememberedNames(laid, [firstId], () =>
      withNames(
        laid,
        firstId,
        wanted,
        places.map((place) => lengths[place]!),
      ),
    )
    now.set(wire, { laid, measured })
    spools.push(kept ? { ...named.spools, isFromBefore: true } : named.spools)
    for (let k = 0; k < places.length; k++) {
      const place = places[k]!
      const isMoved = kept && kept.measured.get(lines[place]!.id) !== lengths[place]
      pieces[place] = isMoved ? NONE : named.pieces[k]!
    }
  }
  if (!settled) laidFor.set(plan, now)
  return { spools, pieces: byLine(lines, pieces) }
}

const spoolsOf = (settled: Plan | undefined, wire: string) => settled && laidFor.get(settled)?.get(wire)

/** Names of spools by their number: there is no end of asking for them. */
const IDS: string[] = []

/** Spools are numbered through the whole plan, so a wire's own change with those of the wires before it. */
function withNames(
  laid: LaidWire,
  firstId: number,
  wanted: readonly WantedLine[],
  lengths: readonly MeasuredLine[],
) {
  while (IDS.length < firstId + laid.used.length) IDS.push(`s${IDS.length}`)
  const ids = IDS.slice(firstId, firstId + laid.used.length)
  let firstRun = 0
  const pieces = wanted.map((line, place): readonly Piece[] => {
    const length = lengths[place]!
    const before = lastPieces.get(length) ?? NONE
    const own = piecesOf(line, firstRun, laid, ids, before)
    if (own !== before) lastPieces.set(length, own)
    firstRun += line.runs.length
    return own
  })
  return {
    spools: {
      ...laid.figures,
      used: laid.used.map(({ lengthM, leftM }, place) => ({ spool: ids[place]!, lengthM, leftM })),
    },
    pieces,
  }
}

/**
 * The pieces of one line; those from before, where they are the same.
 *
 * @param firstRun which of all runs of the wire is the line's first
 */
function piecesOf(
  line: WantedLine,
  firstRun: number,
  { cuts, placeOf }: LaidWire,
  ids: readonly string[],
  before: readonly Piece[],
): readonly Piece[] {
  const own: Piece[] = []
  for (const [k, { pair }] of line.runs.entries()) {
    const run = cuts[firstRun + k]
    for (const { spool: place, wireM, cutM } of run?.cuts ?? []) {
      const spool = ids[placeOf[run!.first + place]!]!
      const last = before[own.length]
      const isSameOne =
        last?.spool === spool && last.wireM === wireM && last.cutM === cutM && last.pair === pair
      own.push(isSameOne ? last : { spool, wireM, pair, cutM })
    }
  }
  return isSame(own, before) ? before : own
}

const wiresOf = memoryOfRow<Line, string>()

/** Where among all lines those of each wire stand. */
const placesByWire = remembering((wires: readonly string[]): ReadonlyMap<string, readonly number[]> => {
  const places = new Map<string, number[]>()
  for (const [place, wire] of wires.entries()) {
    const own = places.get(wire)
    if (own) own.push(place)
    else places.set(wire, [place])
  }
  return places
})

/** What each line asks for. */
function wantedRow(
  plan: Plan,
  lines: readonly Line[],
  lengths: readonly MeasuredLine[],
): readonly WantedLine[] {
  return rememberedRow(lines, [plan.hazards], [lengths], (line, place) => {
    const { id, pairs } = line
    const length = lengths[place]!
    const avoid = splicesToAvoid(plan, line, length)
    return rememberedWants(length, [pairs, avoid], () => wantedLine(id, length.wireM, pairs, avoid))
  })
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
