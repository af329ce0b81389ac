import { type Stretch, without } from '../field/stretches'
import type { MeasuredLine } from '../measure/measured'
import { foundFor } from '../memo'
import type { LineId } from '../plan/id'
import type { Plan } from '../plan/plan'
import { type StandingRecord, standingRecords } from '../plan/standing-records'
import type { Piece, SpoolPlan, WireSpools } from './spool-plan'

/** Wire that lies on a line and is known to have come from one spool. */
interface Lain extends Stretch {
  readonly spool: string
}

/** Names of spools as they are planned, by the spool that takes their place. */
type Stand = (planned: string) => string

/** Shorter than this a piece is none: metres of two records do not meet to the centimetre, m. */
const LEAST_PIECE_M = 0.5

const lastPieces = foundFor<MeasuredLine, readonly Piece[]>()

/**
 * The spools and pieces of a plan with those in their place that were really used: where a record of laid wire names its spool, that spool
 * lies there, and splices fall where one spool follows another. Two spools that were taken for each other change places on what is still
 * to be laid. Lines of several pairs keep what was planned, for a record does not say of which pair it is.
 */
export function usedSpools(
  plan: Plan,
  planned: SpoolPlan,
  measured: ReadonlyMap<LineId, MeasuredLine>,
): SpoolPlan {
  const lain = lainOf(plan)
  if (lain.size === 0) return planned
  const stand = exchanged(plan, lain, planned.pieces)
  const waste = plan.allowances.spliceWasteM
  const pieces = new Map<LineId, readonly Piece[]>()
  for (const [id, own] of planned.pieces) {
    const length = measured.get(id)!
    const isAsPlanned = plan.lines.get(id)!.pairs > 1
    pieces.set(id, isAsPlanned ? own : same(length, cut(own, lain.get(id) ?? [], length.wireM, stand, waste)))
  }
  return { pieces, spools: planned.spools.map((spools) => recounted(plan, spools, pieces)) }
}

function lainOf(plan: Plan): ReadonlyMap<LineId, readonly Lain[]> {
  const byLine = new Map<LineId, readonly Lain[]>()
  for (const record of standingRecords(plan)) {
    const next = withRecord(byLine.get(record.line) ?? [], record)
    if (next.length > 0) byLine.set(record.line, next)
    else byLine.delete(record.line)
  }
  return byLine
}

function withRecord(before: readonly Lain[], record: StandingRecord): readonly Lain[] {
  if (record.kind !== 'recovered' && !(record.kind === 'laid' && record.spool)) return before
  const { fromM, toM } = record
  const rest = before.flatMap(({ spool, ...each }) =>
    without([each], record).map((stretch) => ({ ...stretch, spool })),
  )
  const more = record.kind === 'laid' && toM > fromM ? [{ fromM, toM, spool: record.spool! }] : []
  return [...rest, ...more].sort((a, b) => a.fromM - b.fromM)
}

/** Which spool stands for which, now that some were taken for others. */
function exchanged(
  plan: Plan,
  lain: ReadonlyMap<LineId, readonly Lain[]>,
  planned: SpoolPlan['pieces'],
): Stand {
  const stands = new Map<string, string>()
  const stand: Stand = (name) => stands.get(name) ?? name
  for (const [id, own] of lain) {
    const pieces = planned.get(id) ?? []
    if (plan.lines.get(id)!.pairs > 1) continue
    for (const { fromM, toM, spool } of own) {
      const meant = spoolAt(pieces, (fromM + toM) / 2)
      if (meant === undefined || stand(meant) === spool) continue
      const before = stand(meant)
      const other = [...stands].find(([, now]) => now === spool)?.[0] ?? spool
      stands.set(meant, spool)
      if (other !== meant) stands.set(other, before)
    }
  }
  return stand
}

function spoolAt(pieces: readonly Piece[], wireM: number): string | undefined {
  let runM = 0
  return pieces.find((piece) => {
    runM += piece.wireM
    return runM >= wireM
  })?.spool
}

/** What was used where it is known, and between as planned. */
function cut(
  planned: readonly Piece[],
  lain: readonly Lain[],
  wireM: number,
  stand: Stand,
  wasteM: number,
): readonly Piece[] {
  const runs: { spool: string; wireM: number }[] = []
  const add = (spool: string, lengthOfM: number) => {
    if (lengthOfM <= 0) return
    const last = runs.at(-1)
    // A sliver goes with the piece before it.
    if (last && (last.spool === spool || lengthOfM < LEAST_PIECE_M)) last.wireM += lengthOfM
    else runs.push({ spool, wireM: lengthOfM })
  }
  const addPlanned = (fromM: number, toM: number) => {
    let runM = 0
    for (const piece of planned) {
      add(stand(piece.spool), Math.min(toM, runM + piece.wireM) - Math.max(fromM, runM))
      runM += piece.wireM
    }
  }
  let atM = 0
  for (const { spool, fromM, toM } of lain) {
    const endM = Math.min(toM, wireM)
    addPlanned(atM, fromM)
    add(spool, endM - Math.max(atM, fromM))
    atM = Math.max(atM, endM)
  }
  addPlanned(atM, wireM)
  const ends = (i: number) => (i > 0 ? 1 : 0) + (i < runs.length - 1 ? 1 : 0)
  return runs.map((run, i) => ({ ...run, pair: 0, cutM: run.wireM + (ends(i) * wasteM) / 2 }))
}

/** The very list from before, where it says the same. */
function same(of: MeasuredLine, pieces: readonly Piece[]): readonly Piece[] {
  const before = lastPieces.get(of)
  const isSame =
    before?.length === pieces.length &&
    pieces.every(({ spool, wireM }, i) => before[i]!.spool === spool && before[i]!.wireM === wireM)
  if (isSame) return before
  lastPieces.set(of, pieces)
  return pieces
}

/** The spools of one wire with what is left on each, now that some were used otherwise. */
function recounted(plan: Plan, spools: WireSpools, pieces: SpoolPlan['pieces']): WireSpools {
  const cutM = new Map<string, number>()
  let splices = 0
  for (const [id, own] of pieces) {
    const { wire } = plan.lines.get(id)!
    if (wire !== spools.wire) continue
    splices += own.length - new Set(own.map(({ pair }) => pair)).size
    for (const piece of own) cutM.set(piece.spool, (cutM.get(piece.spool) ?? 0) + piece.cutM)
  }
  const known = new Map(spools.used.map(({ spool, lengthM: full }) => [spool, full]))
  // What nobody planned with is as long as what came off it.
  const order = [...new Set([...known.keys(), ...cutM.keys()])].filter((spool) => cutM.has(spool))
  const used = order.map((spool) => {
    const goneM = cutM.get(spool)!
    const fullM = known.get(spool) ?? goneM
    return { spool, lengthM: fullM, leftM: Math.max(0, fullM - goneM) }
  })
  return { ...spools, used, splices, leftM: used.reduce((sum, each) => sum + each.leftM, 0) }
}
