import { signal } from '@preact/signals'
import type { WorstBecause } from '../budget/worst-parts'
import type { FaultFound } from '../fault/locate'
import type { Position } from '../geo/position'
import type { MeasuredLine } from '../measure/measured'
import type { CircuitId, LineId } from '../plan/id'
import type { Remedy } from '../report/report'

/** What the finder of faults has made of all that is known of a circuit, while it is open. */
export interface FaultFinding {
  readonly circuit: CircuitId
  readonly found: FaultFound
  readonly measured: ReadonlyMap<LineId, MeasuredLine>
}

/** What was sought when the hand was still: set from outside. */
export const createFindings = () => ({
  /** What would mend a circuit: set from outside, when the hand is still and the search has ended. */
  remedies: signal<ReadonlyMap<CircuitId, readonly Remedy[]>>(new Map()),
  /** What would mend just the faint calls through a circuit's board: set from outside likewise. */
  faintRemedies: signal<ReadonlyMap<CircuitId, readonly Remedy[]>>(new Map()),
  /** What of the worst weather makes a circuit fail, or thin, there: set from outside likewise. */
  worstBecause: signal<ReadonlyMap<CircuitId, WorstBecause | null>>(new Map()),
  /** Why the search for them has ended without an answer; empty while nothing is amiss. */
  remedyFailure: signal(''),
  /** Where a fault was found from a meter's reading, to be shown on the map. */
  faultPlace: signal<Position | null>(null),
  /** How likely it is where, and what to do next: shown on the map and to whoever walks. */
  fault: signal<FaultFinding | null>(null),
})
