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

/** All rows of one circuit in one weather, at one wire temperature. */
export interface CircuitRows {
  readonly loop: readonly LoopRow[]
  readonly ringing: readonly RingingRow[]
  readonly voice: readonly VoiceRow[]
}

/** Names one check: which row of which budget. `from → to`, or for a loop the call and the station. */
export type Check =
  | { readonly kind: 'loop'; readonly call: readonly [string, string]; readonly station: string }
  | { readonly kind: 'ringing' | 'voice'; readonly from: string; readonly to: string }
