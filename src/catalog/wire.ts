import { type Held, listOf, members, optional } from '../schema/schema'
import { from, named, orNone, SOURCED } from './entry'

/**
 * Field wire as a uniform two-conductor line. Every quantity is per kilometre of a two-conductor run (a loop kilometre).
 * A figure more is a line more: type, reading, faults, form and the order in a file follow from here.
 */
export const WIRE = members('The wire', {
  ...named('wire'),
  /** DC resistance of both conductors in series at 20 °C, Ω/km. */
  loopOhmPerKm: orNone('The loop resistance at 20 °C', 'Ω/km', 0.01, 1e5),
  /** Relative rise of that resistance per °C above 20 °C, 1/°C. Beyond these it would turn negative at some temperature. */
  tempCoeffPerC: from('The rise of resistance', 'per °C', -0.01, 0.01),
  /** Mutual capacitance of the pair, nF/km. */
  nanoFPerKm: orNone('The capacitance', 'nF/km', 0.01, 1e4),
  /** Loop inductance, mH/km. */
  loopMilliHPerKm: orNone('The loop inductance', 'mH/km', 0.001, 1000),
  /** Leakage conductance between the conductors when dry, µS/km. */
  dryMicroSPerKm: orNone('The leakage when dry', 'µS/km', 1e-6, 1e6),
  /** The same when wet, µS/km. */
  wetMicroSPerKm: orNone('The leakage when wet', 'µS/km', 1e-6, 1e6),
  /** The same for old, nicked wire when wet, µS/km; absent: not known. */
  wornMicroSPerKm: optional(orNone('The leakage when worn and wet', 'µS/km', 1e-6, 1e6)),
  /** The capacitance when wet, where a film of water round the wire raises it; absent: as dry. */
  wetNanoFPerKm: optional(orNone('The capacitance when wet', 'nF/km', 0.01, 1e4)),
  /** The capacitance between two pairs of the wire, both wires of each as one conductor, nF/km; absent: twice that of a pair. */
  phantomNanoFPerKm: optional(orNone('The capacitance between two pairs', 'nF/km', 0.01, 1e4)),
  /** Mass of the run, both conductors with insulation, kg/km. */
  kgPerKm: orNone('The mass', 'kg/km', 0.01, 1e4),
  /** Breaking strength of the run, N. */
  breakN: optional(from('The breaking strength', 'N', 0.1, 1e6)),
  /** Lengths in which the wire is made up, m; none: of any length. */
  spoolsM: listOf('The list of standard spools', from('The length of a spool', 'm', 1, 1e5), { max: 100 }),
  /** Relative permeability of solid wires of iron or steel: at voice frequencies their current keeps to the skin; absent: 1. */
  relativePermeability: optional(from('The relative permeability', 'times that of air', 1, 1e6)),
  /** E·A of the run, N: the pull that would double its length; and its expansion, 1/°C. Absent: as of copper of its resistance. */
  stiffnessN: optional(from('The stiffness', 'N', 1, 1e9)),
  expansionPerC: optional(from('The expansion', 'per °C', 1e-7, 1e-3)),
  /** Outside diameter of what ice and wind lie on, mm; absent: reckoned from the mass. */
  outsideMm: optional(from('The outside diameter', 'mm', 0.1, 100)),
  /** How many such wires hang apart, each with ice of its own; absent: one. */
  hangsApart: optional(from('The number of wires that hang apart', 'wires', 1, 10)),
  ...SOURCED,
})

export type Wire = Held<typeof WIRE>
