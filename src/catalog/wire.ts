import type { Sources, Spread } from './sources'

/** Field wire as a uniform two-conductor line. Every quantity is per kilometre of a two-conductor run (a loop kilometre). */
export interface Wire {
  readonly id: string
  readonly name: string
  /** DC resistance of both conductors in series at 20 °C, Ω/km. */
  readonly loopOhmPerKm: number
  /** Relative rise of that resistance per °C above 20 °C, 1/°C. */
  readonly tempCoeffPerC: number
  /** Mutual capacitance of the pair, nF/km. */
  readonly nanoFPerKm: number
  /** The same when wet, where a film of water round the wire raises it; absent: as dry. */
  readonly wetNanoFPerKm?: number
  /** Loop inductance, mH/km. */
  readonly loopMilliHPerKm: number
  /** Leakage conductance between the conductors when dry, µS/km. */
  readonly dryMicroSPerKm: number
  /** The same when wet, µS/km. */
  readonly wetMicroSPerKm: number
  /** The same for old, nicked wire when wet, µS/km; absent: not known. */
  readonly wornMicroSPerKm?: number
  /** Mass of the run, both conductors with insulation, kg/km. */
  readonly kgPerKm: number
  /** Breaking strength of the run, N. */
  readonly breakN: number
  /** Lengths in which the wire is made up, m. */
  readonly spoolsM: readonly number[]
  /** Solid wire of iron or steel: at voice frequencies its current keeps to its skin, see `steelAtHz`. */
  readonly steel?: { readonly diameterMm: number; readonly relativePermeability: number }
  /** One line for the whole entry. */
  readonly source: string
  /** The same quantity by quantity. */
  readonly sources?: Sources
  readonly spread?: Spread
}
