import type { Sources, Spread } from './sources'

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
    /** An electronic set: below this voltage it draws nothing, above it (V − dropVolts) / dcOhms; absent: 0. */
    readonly dropVolts?: number
    /** Impedance to speech at 1 kHz, taken as a resistance, Ω: of a set with a push-to-talk button, while it listens. */
    readonly acOhms: number
    /** The same while the button is pressed, Ω; absent: as while listening. */
    readonly speakAcOhms?: number
    /** Least direct current that the set works on, mA; 0 where it needs none. */
    readonly minMA: number
  }
  readonly ringer?: Ringer
  readonly generator?: HandGenerator
  /** Most insertion loss at 1 kHz over which the set is still understood, dB. */
  readonly maxLossDb: number
  /** The cells inside a set with a battery of its own. */
  readonly battery?: {
    readonly volts: number
    readonly ampHours: number
    /** Drain while talking, and while on hook, mA. */
    readonly talkMA: number
    readonly idleMA: number
    /** Id of the cell, and how many of them, where the program knows it. */
    readonly cell?: string
    readonly cells?: number
  }
  /** Mass with its case and without its cells, kg. */
  readonly kg?: number
  /** One line for the whole entry. */
  readonly source: string
  /** The same quantity by quantity. */
  readonly sources?: Sources
  readonly spread?: Spread
}
