import { awgDiameterMm } from './awg'
import {
  conductorBreakN,
  conductorKgPerKm,
  conductorOhmPerKm,
  conductorTempCoeffPerC,
  solid,
} from './conductor'
import { COPPER } from './conductor-materials'
import type { Wire } from './wire'

/** Share by which a twisted wire is longer than its cable: a published table of pair resistances against straight wire. */
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

/** One twisted pair of solid copper in polyethylene and a light jacket: everything follows from the gauge. */
function copperPair(gauge: number): Wire {
  const diameterMm = awgDiameterMm(gauge)
  const wire = solid(COPPER, diameterMm, PAIR_TAKE_UP)
  return {
    id: `copper-${gauge}`,
    name: `Twisted copper pair, ${gauge} AWG`,
    loopOhmPerKm: 2 * conductorOhmPerKm(wire),
    tempCoeffPerC: conductorTempCoeffPerC(wire),
    nanoFPerKm: 52,
    loopMilliHPerKm: 0.62,
    dryMicroSPerKm: 0.1,
    wetMicroSPerKm: 1,
    kgPerKm: 2 * conductorKgPerKm(wire) + plasticKgPerKm(diameterMm),
    breakN: 2 * conductorBreakN(wire),
    spoolsM: [305, 1000],
    source: 'computed from the gauge: ASTM B258 diameter, IEC 60028 copper, 1.8 % take-up of the twist',
    sources: {
      loopOhmPerKm:
        'Derived: diameter by ASTM B258, copper by IEC 60028, and 1.8 % more wire than cable, as a published table of cable pairs has it.',
      tempCoeffPerC: 'IEC 60028.',
      nanoFPerKm:
        '83 nF per mile, the usual mutual capacitance of plastic cable: 7 CFR 1755.390, from memory.',
      loopMilliHPerKm: 'About 1 mH per mile (Reference Data for Radio Engineers, exchange-cable table).',
      dryMicroSPerKm: 'A sound pair with field splices, from memory; the cable alone is far better.',
      wetMicroSPerKm: 'A jacketed pair with taped splices in the wet, from memory.',
      kgPerKm:
        'Derived: copper of the gauge, 0.25 mm of polyethylene on each wire and a jacket of 0.8 mm; thicknesses from memory.',
      breakN: 'Derived: 220 N/mm² of annealed copper, from memory.',
      spoolsM: 'Box of 1000 ft and reel of 1 km: common practice.',
    },
  }
}

export const COPPER_PAIRS: readonly Wire[] = [19, 22, 24, 26].map(copperPair)
