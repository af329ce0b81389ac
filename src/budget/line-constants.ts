import { seriesOfSolid } from '../catalog/skin-effect'
import type { Wire } from '../catalog/wire'
import type { Weather } from '../plan/plan'
import type { ModelLine } from './circuit-model'
import { type Complex, complex, divide, multiply, sqrt } from './complex'
import type { Conditions } from './conditions'

/** Primary constants of a uniform line, per kilometre of line. */
export interface LineConstants {
  readonly ohmPerKm: number
  readonly henryPerKm: number
  readonly faradPerKm: number
  readonly siemensPerKm: number
  /** Solid wire of iron or steel, and how many of it lie in series: its resistance rises with frequency, its inductance falls. */
  readonly iron?: {
    readonly relativePermeability: number
    readonly conductors: 1 | 2
    /** How many of such wires lie side by side as each conductor. */
    readonly abreast: 1 | 2
  }
}

/**
 * Primary constants of a wire in one weather, at one temperature, per km of line.
 *
 * R = R₂₀ [1 + α (t − 20)]; L as catalogued; G the dry or the wet leakage; C too, where the wire has one
 * of its own when wet. Earth return uses one conductor, so half
 * of R. A wire so cold that the linear law would leave it no resistance is taken at 1 % of R₂₀. Worn wire leaks `wornMicroSPerKm`
 * when wet (as new where that is not known) and ten times as much as new when dry. Splices add their ohms, and their leakage when wet.
 * A phantom takes two pairs, both wires of each as one conductor: R/2, L/2, 2 G, and 2 C unless the wire has a figure for it; a simplex
 * takes one pair so, and the earth: R/4, the rest as an earth return.
 *
 * Source: IEC 60028 (1925) for the law of temperature; the rest by definition of the catalog.
 */
export function lineConstants(
  wire: Wire,
  weather: Weather,
  wireTempC: number,
  returnBy: 'pair' | 'earth' = 'pair',
  { over, worn, splices }: Pick<ModelLine, 'over' | 'worn' | 'splices'> = {},
): LineConstants {
  const warm = Math.max(0.01, 1 + wire.tempCoeffPerC * (wireTempC - 20))
  const wet = weather === 'wet'
  const byEarth = over === 'simplex' || (!over && returnBy === 'earth')
  // Both wires of a pair as one conductor: two abreast have half the ohms, and two pairs so half the loop of one.
  const abreast = over ? 2 : 1
  const pairs = over === 'phantom' ? 2 : 1
  const wireOhms = (wire.loopOhmPerKm * warm * (byEarth ? 0.5 : 1)) / abreast
  // The splices of a rider are those of a whole pair, of an earth return those of its one wire.
  const spliceOhms = ((splices?.ohmPerKm ?? 0) * (over && byEarth ? 0.5 : 1)) / abreast
  const leak = leakMicroSPerKm(wire, wet, worn) * 1e-6 + (wet ? (splices?.wetSiemensPerKm ?? 0) : 0)
  const ofPair = wet ? (wire.wetNanoFPerKm ?? wire.nanoFPerKm) : wire.nanoFPerKm
  const nanoF = over === 'phantom' ? (wire.phantomNanoFPerKm ?? 2 * ofPair) : ofPair
  return {
    ohmPerKm: wireOhms + spliceOhms,
    henryPerKm: wire.loopMilliHPerKm / 1000 / pairs,
    faradPerKm: nanoF * 1e-9,
    ...(wire.relativePermeability !== undefined && {
      iron: { relativePermeability: wire.relativePermeability, conductors: byEarth ? 1 : 2, abreast },
    }),
    siemensPerKm: leak * pairs,
  }
}

function leakMicroSPerKm(wire: Wire, wet: boolean, worn: true | undefined): number {
  if (!worn) return wet ? wire.wetMicroSPerKm : wire.dryMicroSPerKm
  return wet ? (wire.wornMicroSPerKm ?? wire.wetMicroSPerKm) : 10 * wire.dryMicroSPerKm
}

/** The same for one line of a circuit. */
export const constantsOf = (
  line: Pick<ModelLine, 'wire' | 'electrodeOhms' | 'over' | 'worn' | 'splices'>,
  { weather, wireTempC }: Pick<Conditions, 'weather' | 'wireTempC'>,
): LineConstants => lineConstants(line.wire, weather, wireTempC, line.electrodeOhms ? 'earth' : 'pair', line)

/** Series impedance R + jωL, Ω/km; of iron wire both as its skin effect leaves them at that frequency. */
export function seriesOhmPerKm(line: LineConstants, hz: number): Complex {
  if (!line.iron) return complex(line.ohmPerKm, 2 * Math.PI * hz * line.henryPerKm)
  const { abreast } = line.iron
  const ofOne = { ohmPerKm: line.ohmPerKm * abreast, henryPerKm: line.henryPerKm * abreast, ...line.iron }
  const { resistance, reactance } = seriesOfSolid(ofOne, hz)
  return complex(resistance / abreast, reactance / abreast)
}

/** Shunt admittance G + jωC, S/km. */
export const shuntSiemensPerKm = (line: LineConstants, hz: number): Complex =>
  complex(line.siemensPerKm, 2 * Math.PI * hz * line.faradPerKm)

/**
 * Secondary constants: γ = √((R + jωL)(G + jωC)) in Np/km and rad/km, Z₀ = √((R + jωL)/(G + jωC)) in Ω.
 *
 * Source: W. L. Everitt, Communication Engineering, 2nd ed. (1937), ch. 4 (from memory).
 */
export function propagation(line: LineConstants, hz: number): { gammaPerKm: Complex; z0Ohm: Complex } {
  const series = seriesOhmPerKm(line, hz)
  const shunt = shuntSiemensPerKm(line, hz)
  return { gammaPerKm: sqrt(multiply(series, shunt)), z0Ohm: sqrt(divide(series, shunt)) }
}
