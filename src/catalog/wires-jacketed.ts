import { awgDiameterMm } from './awg'
import {
  conductorBreakN,
  conductorKgPerKm,
  conductorOhmPerKm,
  conductorTempCoeffPerC,
  solid,
} from './conductor'
import { ALUMINIUM, COPPER, type ConductorMaterial } from './conductor-materials'
import type { Wire } from './wire'

/** Length of a wire in a unit length of twisted cable. */
const PAIR_TAKE_UP = 1.018

const POLYETHYLENE_KG_PER_M3 = 930
const INSULATION_MM = 0.25
const JACKET_MM = 0.8

/** Insulation of two wires and a tube of jacket round them, kg/km. */
function plasticKgPerKm(diameterMm: number): number {
  const insulatedMm = diameterMm + 2 * INSULATION_MM
  const boreMm = 2 * insulatedMm
  const ringMm2 = (outerMm: number, innerMm: number) => (Math.PI / 4) * (outerMm ** 2 - innerMm ** 2)
  const mm2 = 2 * ringMm2(insulatedMm, diameterMm) + ringMm2(boreMm + 2 * JACKET_MM, boreMm)
  return (mm2 * POLYETHYLENE_KG_PER_M3) / 1000
}

/** One twisted pair of solid wire in polyethylene and a light jacket: everything follows from metal and diameter. */
function jacketedPair(pair: {
  readonly id: string
  readonly name: string
  readonly material: ConductorMaterial
  readonly diameterMm: number
  readonly diameterSource: string
}): Wire {
  const wire = solid(pair.material, pair.diameterMm, PAIR_TAKE_UP)
  return {
    id: pair.id,
    name: pair.name,
    loopOhmPerKm: 2 * conductorOhmPerKm(wire),
    tempCoeffPerC: conductorTempCoeffPerC(wire),
    nanoFPerKm: 52,
    loopMilliHPerKm: 0.62,
    dryMicroSPerKm: 0.1,
    wetMicroSPerKm: 1,
    kgPerKm: 2 * conductorKgPerKm(wire) + plasticKgPerKm(pair.diameterMm),
    breakN: 2 * conductorBreakN(wire),
    spoolsM: [305, 1000],
    source: `computed from ${pair.diameterSource} and the metal, with 1.8 % more wire than cable for the twist`,
    sources: {
      loopOhmPerKm: `Derived: ${pair.diameterSource}; ${pair.material.source}; 1.8 % more wire than cable, as in a published table of cable pairs (line-equipment installation practice, 2003, table 9).`,
      tempCoeffPerC: `${pair.material.source}.`,
      nanoFPerKm:
        '83 nF per mile, the usual mutual capacitance of plastic cable: 7 CFR 1755.390, from memory.',
      loopMilliHPerKm: 'About 1 mH per mile (Reference Data for Radio Engineers, exchange-cable table).',
      dryMicroSPerKm: 'A sound pair with field splices, from memory; the cable alone is far better.',
      wetMicroSPerKm: 'A jacketed pair with taped splices in the wet, from memory.',
      kgPerKm:
        'Derived: the metal, 0.25 mm of polyethylene on each wire and a jacket of 0.8 mm; thicknesses from memory.',
      breakN: `Derived: two wires of ${pair.material.breakNPerMm2} N/mm², from memory; a jacket adds to it.`,
      spoolsM: 'Box of 1000 ft and reel of 1 km: common practice.',
    },
  }
}

const copperPair = (gauge: number): Wire =>
  jacketedPair({
    id: `copper-${gauge}`,
    name: `Twisted copper pair, ${gauge} AWG`,
    material: COPPER,
    diameterMm: awgDiameterMm(gauge),
    diameterSource: `the diameter of ${gauge} AWG (ASTM B258)`,
  })

export const JACKETED_PAIRS: readonly Wire[] = [
  ...[19, 20, 22, 23, 24, 26].map(copperPair),
  jacketedPair({
    id: 'aluminium-0-8',
    name: 'Twisted aluminium pair, 0.8 mm',
    material: ALUMINIUM,
    diameterMm: 0.8,
    diameterSource: 'the diameter of 0.8 mm',
  }),
]
