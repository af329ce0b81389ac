import type { Sources } from './sources'

/** A bell across the line: resistance, inductance and capacitor in series. */
export interface Ringer {
  /** Series resistance, Ω (the DC resistance where there is no capacitor). */
  readonly ohms: number
  readonly henries?: number
  /** Series capacitor, µF. Without one the ringer draws DC. */
  readonly microF?: number
  /** Least rms voltage across the whole branch that rings the bell, V. */
  readonly minVolts: number
}

/** A hand generator: open-circuit rms volts behind a resistance. */
interface HandGenerator {
  readonly volts: number
  readonly hz: number
  readonly ohms: number
}

/** A telephone. */
export interface TelephoneSet {
  readonly id: string
  readonly name: string
  /** `local`: a battery of its own · `common`: fed over the line · `sound`: powered by the voice. */
  readonly talk: 'local' | 'common' | 'sound'
  readonly offHook: {
    /** Resistance to the battery, Ω. */
    readonly dcOhms: number
    /** Impedance to speech at 1 kHz, taken as a resistance, Ω. */
    readonly acOhms: number
    /** Least direct current that the set works on, mA; 0 where it needs none. */
    readonly minMA: number
  }
  readonly ringer?: Ringer
  readonly generator?: HandGenerator
  /** Most insertion loss at 1 kHz over which the set is still understood, dB. */
  readonly maxLossDb: number
  /** One line for the whole entry. */
  readonly source: string
  /** The same quantity by quantity. */
  readonly sources?: Sources
}
