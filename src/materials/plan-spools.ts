import type { Catalog } from '../catalog/catalog'
import type { MeasuredLine } from '../measure/measured'
import { memoryOfEach } from '../memo'
import type { LineId } from '../plan/id'
import type { Line, Plan } from '../plan/plan'
import { carriedLengthsM } from './carried-spools'
import { type LaidWire, layWire } from './lay-wire'
import { splicesToAvoid } from './splice-limits'
import type { Piece, SpoolPlan, WireSpools } from './spool-plan'
import { layingOf, loadAllowancesOf } from './work-allowances'

/** What was laid last for a wire, and everything that it followed from: where all of it is the same, so is the answer. */
const remembered = new Map<string, { readonly from: readonly unknown[]; readonly laid: LaidWire }[]>()

const rememberedNames = memoryOfEach<LaidWire, ReturnType<typeof withNames>>()
const piecesOfLine = memoryOfEach<MeasuredLine, readonly Piece[]>()

/** A line that is cut as before keeps its very list of pieces, though all spools were shared out anew. */
const rememberedPieces = (measured: MeasuredLine, pieces: readonly Piece[]): readonly Piece[] =>
  piecesOfLine(measured, valuesOf(pieces), () => pieces)

const flattened = memoryOfEach<readonly Piece[], readonly unknown[]>()
const valuesOf = (pieces: readonly Piece[]): readonly unknown[] =>
  flattened(pieces, [], () => pieces.flatMap(({ spool, wireM, pair, cutM }) => [spool, wireM, pair, cutM]))

/** From so many lines of one wire on a drag does not share out its spools anew: below, it is done within a millisecond. */
const LARGE_GROUP = 60
const NONE: readonly Piece[] = []

interface Laid {
  readonly laid: LaidWire
  readonly measured: ReadonlyMap<LineId, MeasuredLine>
}
/** What each plan was laid with, by wire. */
const laidFor = new WeakMap<Plan, ReadonlyMap<string, Laid>>()

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
  for (const [wire, lines] of linesByWire(plan)) {
    const kept = lines.length >= LARGE_GROUP ? spoolsOf(settled, wire) : undefined
    const laid = kept?.laid ?? layOnce(plan, catalog, measured, wire, lines)
    const firstId = before + 1
    before += laid.used.length
    const named = rememberedNames(laid, [firstId], () => withNames(laid, firstId))
    now.set(wire, { laid, measured })
    spools.push(kept ? { ...named.spools, isFromBefore: true } : named.spools)
    for (const { id } of lines) {
      const length = measured.get(id)!
      const own = named.pieces.get(id) ?? NONE
      const isMoved = kept && kept.measured.get(id) !== length
      pieces.set(id, isMoved ? NONE : own.length === 0 ? NONE : rememberedPieces(length, own))
    }
  }
  if (!settled) laidFor.set(plan, now)
  return { spools, pieces }
}

const spoolsOf = (settled: Plan | undefined, wire: string) => settled && laidFor.get(settled)?.get(wire)

/** Spools are numbered through the whole plan, so a wire's own change with those of the wires before it. */
function withNames({ figures, used, pieces }: LaidWire, firstId: number) {
  const idOf = (spool: number) => `s${firstId + spool}`
  return {
    spools: { ...figures, used: used.map((spool, i) => ({ spool: idOf(i), ...spool })) },
    pieces: new Map(
      [...pieces].map(([line, own]) => [line, own.map((piece) => ({ ...piece, spool: idOf(piece.spool) }))]),
    ),
  }
}

function linesByWire(plan: Plan): ReadonlyMap<string, readonly Line[]> {
  const byWire = new Map<string, Line[]>()
  for (const line of plan.lines.values()) {
    const lines = byWire.get(line.wire)
    if (lines) lines.push(line)
    else byWire.set(line.wire, [line])
  }
  return byWire
}

function layOnce(
  plan: Plan,
  catalog: Catalog,
  measured: ReadonlyMap<LineId, MeasuredLine>,
  wire: string,
  lines: readonly Line[],
): LaidWire {
  const entry = catalog.wires.get(wire)
  const { spliceWasteM, reservePct } = plan.allowances
  const lengths = lines.map((line) => measured.get(line.id)!)
  const stretches = lines.map((line, i) => splicesToAvoid(plan, line, lengths[i]!))
  const { perPersonKg, reelPct } = loadAllowancesOf(plan)
  const crew = layingOf(plan).people
  const from = [
    entry,
    plan.stock,
    ...(plan.stock.length === 0 ? [perPersonKg, reelPct, crew] : []),
    spliceWasteM,
    reservePct,
    ...lengths,
    ...stretches,
    ...lines.map((line) => line.pairs),
  ]
  const kept = remembered.get(wire) ?? []
  const known = kept.find((one) => one.from.length === from.length && one.from.every((x, i) => x === from[i]))
  if (known) return known.laid

  const lengthsM = entry ? carriedLengthsM(entry, { perPersonKg, reelPct, crew }) : []
  const standard = lengthsM.map((lengthM) => ({ lengthM, count: Number.POSITIVE_INFINITY }))
  const laid = layWire({
    wire,
    kgPerKm: entry?.kgPerKm ?? 0,
    kinds: plan.stock.length === 0 ? standard : plan.stock.filter((spool) => spool.wire === wire),
    wasteM: spliceWasteM,
    reservePct,
    lines: lines.map((line, i) => ({
      id: line.id,
      wireM: lengths[i]!.wireM,
      pairs: line.pairs,
      avoid: stretches[i]!,
    })),
  })
  remembered.set(wire, [{ from, laid }, ...kept].slice(0, KEPT))
  return laid
}
