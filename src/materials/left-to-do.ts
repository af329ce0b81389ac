import type { Catalog } from '../catalog/catalog'
import type { LineField } from '../field/line-field'
import { lengthM, type Stretch, without } from '../field/stretches'
import type { MeasuredLine } from '../measure/measured'
import type { LineId } from '../plan/id'
import type { Plan } from '../plan/plan'
import { type NetHours, sharedOutH } from './hours'
import type { Piece } from './spool-plan'

/** What is still to do with wire of one kind. */
export interface WireLeft {
  readonly wire: string
  /** Wire of all pairs that is not laid yet, m, and its mass, kg. */
  readonly layM: number
  readonly kg: number
  /** Spools that it comes from, with what of it comes from each, m. */
  readonly spools: readonly { readonly spool: string; readonly layM: number }[]
  /** Wire of all pairs that lies there, to be taken up one day, m. */
  readonly takeUpM: number
}

/** What is still to be laid of a net, and what lies there. */
export interface LeftToDo {
  readonly wires: readonly WireLeft[]
  /** Hours of the lines' own, when the crews share them out. */
  readonly layH: number
  readonly takeUpH: number
}

/**
 * What is left to do, from what was recorded: what lies, or was taken up again, is no more to be laid. Hours are those of each line in
 * proportion to its wire.
 */
export function leftToDo(
  plan: Plan,
  catalog: Catalog,
  fields: ReadonlyMap<LineId, LineField>,
  {
    measured,
    pieces,
    hours,
  }: {
    readonly measured: ReadonlyMap<LineId, MeasuredLine>
    readonly pieces: ReadonlyMap<LineId, readonly Piece[]>
    readonly hours: NetHours
  },
): LeftToDo {
  const wires = new Map<string, { layM: number; takeUpM: number; spools: Map<string, number> }>()
  const [layH, takeUpH]: [number[], number[]] = [[], []]
  const hoursOf = new Map(hours.lines.map((each) => [each.line, each]))
  for (const { id, wire, pairs } of plan.lines.values()) {
    const { wireM } = measured.get(id)!
    const field = fields.get(id)
    const open = openStretches(field, wireM)
    const sum = wires.get(wire) ?? { layM: 0, takeUpM: 0, spools: new Map<string, number>() }
    wires.set(wire, sum)
    const [openM, laidM] = [lengthM(open), field?.laidM ?? 0]
    sum.layM += openM * pairs
    sum.takeUpM += laidM * pairs
    for (const [spool, ofItM] of spoolsOn(open, pieces.get(id) ?? []))
      sum.spools.set(spool, (sum.spools.get(spool) ?? 0) + ofItM)
    const own = hoursOf.get(id)
    if (!own || wireM <= 0) continue
    layH.push((own.totalH * openM) / wireM)
    takeUpH.push((own.recoveryH * Math.min(laidM, wireM)) / wireM)
  }
  return {
    wires: [...wires].map(([wire, { layM, takeUpM, spools }]) => ({
      wire,
      layM,
      kg: ((catalog.wires.get(wire)?.kgPerKm ?? 0) * layM) / 1000,
      spools: [...spools].map(([spool, ofItM]) => ({ spool, layM: ofItM })),
      takeUpM,
    })),
    layH: sharedOutH(Float64Array.from(layH), hours.crews),
    takeUpH: sharedOutH(Float64Array.from(takeUpH), hours.crews),
  }
}

/** What of a line is still to be laid. */
function openStretches(field: LineField | undefined, wireM: number): readonly Stretch[] {
  const done = field ? [...field.done.laid, ...field.done.recovered] : []
  return done.reduce<readonly Stretch[]>(without, [{ fromM: 0, toM: wireM }])
}

/** From which spools stretches of a line come, pair by pair. */
function spoolsOn(open: readonly Stretch[], pieces: readonly Piece[]): ReadonlyMap<string, number> {
  const from = new Map<string, number>()
  const runM = new Map<number, number>()
  for (const { spool, pair, wireM } of pieces) {
    const startM = runM.get(pair) ?? 0
    runM.set(pair, startM + wireM)
    const ofItM = open.reduce(
      (sum, { fromM, toM }) => sum + Math.max(0, Math.min(toM, startM + wireM) - Math.max(fromM, startM)),
      0,
    )
    if (ofItM > 0) from.set(spool, (from.get(spool) ?? 0) + ofItM)
  }
  return from
}
