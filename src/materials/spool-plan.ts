import type { LineId } from '../plan/id'

/** One piece of wire on a line, in order from `from` to `to`; splices join neighbouring pieces of the same pair. */
export interface Piece {
  /** Id of the spool that it is cut from. */
  readonly spool: string
  /** Metres of the line that the piece covers. */
  readonly wireM: number
  /** Which pair of the line, from 0. */
  readonly pair: number
  /** Metres cut from the spool: what it covers, and half the waste of the splice at each spliced end. */
  readonly cutM: number
}

/** What one kind of wire asks for. */
export interface WireSpools {
  readonly wire: string
  /** In a drag: these are the figures from before it, for a group too large to share out anew at every move. */
  readonly isFromBefore?: true
  /** Σ wireM · pairs · (1 + reserve) + splice waste, m. */
  readonly neededM: number
  /** Spools to take: those used, and enough besides to reach `neededM`. */
  readonly carry: readonly { readonly lengthM: number; readonly count: number }[]
  readonly used: readonly { readonly spool: string; readonly lengthM: number; readonly leftM: number }[]
  readonly splices: number
  /** Left over on the spools used, m. */
  readonly leftM: number
  /** Mass of the wire carried, kg. */
  readonly kg: number
  /** Where the stock is too short: metres missing to `neededM`, else 0. */
  readonly missingM: number
  /** Lines that the stock cannot lay whole; the pieces of such a line, if any, begin it. */
  readonly notLaid: readonly LineId[]
  /** No plan can do with less than this, compared in this order. Equal to the plan's own figures where it is proved the best. */
  readonly bound: { readonly splices: number; readonly spools: number; readonly leftM: number }
}

/** The spools of a whole plan, wire by wire, and the pieces that each line is laid with. */
export interface SpoolPlan {
  readonly spools: readonly WireSpools[]
  readonly pieces: ReadonlyMap<LineId, readonly Piece[]>
}
