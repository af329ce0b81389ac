import { signal } from '@preact/signals'
import type { Position } from '../geo/position'
import type { CircuitId, LineId, StationId } from '../plan/id'
import type { Lay, Plan } from '../plan/plan'
import type { FarFound } from '../report/far-shades'

/** A station from which one asks how far away one telephone more could stand. */
export interface FarAsked {
  readonly from: StationId
  /** Null for a circuit of its own. */
  readonly circuit: CircuitId | null
  readonly wire: string
  readonly set: string
  readonly lay: Lay
}

/** A line that is being drawn, of which the same is asked. */
export interface FarDrawn {
  /** The plan with the line as it would be, wherever it ends. */
  readonly plan: Plan
  readonly line: LineId
  /** Its last place so far, and the wire that is laid up to there, m. */
  readonly from: Position
  readonly laidM: number
}

/** What was found, and what it was asked of. */
export interface Far {
  /** The plan with that line. */
  readonly plan: Plan
  readonly line: LineId
  readonly found: FarFound | null
  /** More is still to come. */
  readonly isUnderWay: boolean
  /** Why no more will come; empty while nothing is amiss. */
  readonly failure: string
}

/** How far from here: what is asked, and what was found. */
export const createFarState = () => ({
  farAsked: signal<FarAsked | null>(null),
  farDrawn: signal<FarDrawn | null>(null),
  far: signal<Far | null>(null),
  /** Places on a circuit that were found to be good for something, the best first. */
  spots: signal<readonly Position[]>([]),
  /** Whether a line that is drawn shows how far it could go. */
  farWhileDrawing: signal(false),
})
