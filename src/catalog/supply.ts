import type { Sources, Spread } from './sources'

/** Ringing source: open-circuit rms volts behind a resistance. */
interface RingSource {
  readonly volts: number
  readonly hz: number
  readonly ohms: number
  /** Most ringer equivalents that it may be loaded with. */
  readonly maxLoad?: number
}

/** What feeds a circuit from one station. */
export interface Supply {
  readonly id: string
  readonly name: string
  /** `feed`: bridged across the pair · `series`: in one leg of the set · `ringdown`: a feed and a ring source for each port. */
  readonly kind: 'feed' | 'series' | 'ringdown'
  /** DC open-circuit volts. */
  readonly volts: number
  /** Total feed resistance, Ω. */
  readonly ohms: number
  /** Constant-current limit of an electronic feed, mA. */
  readonly maxMA?: number
  /** Direct current at which it takes the line as answered, mA. */
  readonly offHookMA?: number
  readonly ring?: RingSource
  /** Lamp or LED in series with the DC source. */
  readonly indicator?: { readonly forwardVolts: number; readonly ohms: number }
  /** Ringdown only: speech loss through the unit, dB. */
  readonly insertionDb?: number
  readonly ampHours?: number
  /** Id of the cell of which the battery is made, where the program knows it. */
  readonly cell?: string
  /** Volts at the end of the battery's life. */
  readonly endVolts?: number
  /** What the unit itself takes from whatever feeds it, W; absent: not known. */
  readonly powerW?: { readonly idle: number; readonly talk: number; readonly ring: number }
  /** The battery behind the unit, and what of it gets through the converter between. */
  readonly fedBy?: {
    readonly volts: number
    readonly ampHours: number
    readonly efficiencyPct: number
    /** Id of the cell of which that battery is made, where the program knows it. */
    readonly cell?: string
  }
  /** Mass of the unit with its battery, kg. */
  readonly kg?: number
  /** One line for the whole entry. */
  readonly source: string
  /** The same quantity by quantity. */
  readonly sources?: Sources
  readonly spread?: Spread
}
