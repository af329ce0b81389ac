import { signal } from '@preact/signals'
import type { WorstBecause } from '../budget/worst-parts'
import type { Position } from '../geo/position'
import type { CircuitId } from '../plan/id'
import type { Remedy } from '../report/report'

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
})
