import type { WireStretch } from '../measure/crossing-wire'
import type { LineId } from '../plan/id'
import type { Run } from './cut-runs'
import { ROUNDING_M, type SpoolKind } from './spool-kinds'

/** What the lines ask of one wire, and the spools that there are. */
export interface WantedWire {
  readonly wire: string
  readonly kgPerKm: number
  readonly kinds: readonly SpoolKind[]
  readonly wasteM: number
  readonly reservePct: number
  readonly lines: readonly WantedLine[]
}

/** What one line asks of its wire: the same object as long as it asks for the same. */
export interface WantedLine {
  readonly id: LineId
  readonly wireM: number
  readonly pairs: number
  /** Its pairs; none where it needs no wire. */
  readonly runs: readonly PairRun[]
}

export const wantedLine = (
  id: LineId,
  wireM: number,
  pairs: number,
  avoid: readonly WireStretch[],
): WantedLine => ({
  id,
  wireM,
  pairs,
  runs: Array.from({ length: wireM > ROUNDING_M ? pairs : 0 }, (_, pair) => ({
    line: id,
    pair,
    needM: wireM,
    avoid,
  })),
})

/** One pair of one line. */
export interface PairRun extends Run {
  readonly line: LineId
  readonly pair: number
}
