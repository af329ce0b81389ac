/** The figures of a circuit, one row a check. Stations are named by id. */

export type Verdict = 'works' | 'thin' | 'fails'

/** Direct current through one set of a call, mA. */
export interface LoopRow {
  /** Stations of the two sets off hook. */
  readonly call: readonly [string, string]
  /** The one whose current this is. */
  readonly station: string
  readonly mA: number
  readonly minMA: number
}

/** Rms voltage across one ringing set, V. */
export interface RingingRow {
  /** Station of the generator or of the supply. */
  readonly from: string
  readonly to: string
  readonly volts: number
  readonly minVolts: number
}

/** Insertion loss at 1 kHz from one set off hook to another, dB. */
export interface VoiceRow {
  readonly from: string
  readonly to: string
  readonly lossDb: number
  readonly maxDb: number
}

/** The row of each kind of check. A kind more is an entry here, one in `CHECKS` and one in the words: what forgets it does not compile. */
export interface RowOf {
  readonly loop: LoopRow
  readonly ringing: RingingRow
  readonly voice: VoiceRow
}
export type CheckKind = keyof RowOf

interface Way {
  readonly from: string
  readonly to: string
}

/** Which row of a kind it is, by its stations. */
interface NamedBy {
  readonly loop: Pick<LoopRow, 'call' | 'station'>
  readonly ringing: Way
  readonly voice: Way
}
export type CheckOf<K extends CheckKind> = { readonly kind: K } & NamedBy[K]

/** Names one check: which row of which budget. */
export type Check = { [K in CheckKind]: CheckOf<K> }[CheckKind]

/**
 * Takes one figure of a check: the two stations that it is about, the one of them whose figure it is, what there is, and the limit. A search
 * asks for thousands of them, of which it needs one.
 */
export type TakeFigure = (from: string, to: string, where: string, have: number, limit: number) => void

/** All rows of one circuit in one weather, at one wire temperature. */
export type CircuitRows = { readonly [K in CheckKind]: readonly RowOf[K][] }
