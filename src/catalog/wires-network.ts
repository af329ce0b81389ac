import { METRES_PER_FOOT } from '../units'
import { awgDiameterMm } from './awg'
import { CABLE_SOURCES, CABLE_SPREAD, fromMetal, PAIR_TAKE_UP, TAKE_UP_SOURCE } from './cable-pair'
import {
  conductorBreakN,
  conductorOhmPerKm,
  conductorTempCoeffPerC,
  solid,
  stretchOfConductors,
  stretchSources,
} from './conductor'
import { COPPER, COPPER_CLAD_ALUMINIUM, type ConductorMaterial } from './conductor-materials'
import { allowance, derivedOnMemory, fromMemory, practice, type Sources, type Spread } from './sources'
import type { Wire } from './wire'

const BOX_M = 1000 * METRES_PER_FOOT
const NETWORK_KG_PER_KM = 31
const CCA_KG_PER_KM = 21

/** So many of the four twisted pairs of a network cable as one pair: one wire of each in either leg. The mass is that of the whole cable. */
function networkCable(cable: {
  readonly id: string
  readonly name: string
  readonly material: ConductorMaterial
  readonly pairs: 1 | 2
  readonly kgPerKm: number
  readonly spread: Spread
  readonly sources: Sources
}): Wire {
  const { material, pairs } = cable
  const wire = solid(material, awgDiameterMm(24), PAIR_TAKE_UP)
  const beside = pairs === 1 ? '' : `; ${pairs} pairs side by side`
  return {
    id: cable.id,
    name: cable.name,
    loopOhmPerKm: (2 * conductorOhmPerKm(wire)) / pairs,
    tempCoeffPerC: conductorTempCoeffPerC(wire),
    nanoFPerKm: 52 * pairs,
    loopMilliHPerKm: 0.62 / pairs,
    dryMicroSPerKm: 0.1 * pairs,
    wetMicroSPerKm: 2 * pairs,
    wornMicroSPerKm: 50 * pairs,
    kgPerKm: cable.kgPerKm,
    breakN: 8 * conductorBreakN(wire),
    spoolsM: [100, BOX_M],
    ...stretchOfConductors(wire, 8),
    outsideMm: 5.2,
    source: `computed from 24 AWG (ASTM B258) and the metal; capacitance as of plastic cable${beside}`,
    sources: {
      ...CABLE_SOURCES,
      ...stretchSources(wire),
      loopOhmPerKm: fromMetal(
        `From the diameter of 24 AWG (ASTM B258), ${TAKE_UP_SOURCE}${beside}, and the metal`,
        material.sources.ohmMm2PerM,
      ),
      tempCoeffPerC: material.sources.tempCoeffPerC,
      nanoFPerKm: fromMemory(
        `About 52 nF/km of each pair, at most 56, from memory${beside}; a network encyclopedia has 18 pF per foot at most.`,
      ),
      wetMicroSPerKm: fromMemory(
        'A thin jacket made for indoors, with taped splices in the wet, from memory.',
      ),
      kgPerKm: fromMemory('30 to 35 kg/km of copper cable, the whole of it, from memory.'),
      breakN: fromMetal('All eight wires', material.sources.breakNPerMm2),
      spoolsM: practice('Rings of 100 m and boxes of 1000 ft: common practice.'),
      outsideMm: fromMemory('5 to 5.5 mm, from memory.'),
      ...cable.sources,
    },
    spread: { ...CABLE_SPREAD, ...cable.spread },
  }
}

const CCA: Parameters<typeof networkCable>[0] = {
  id: 'network-cca-24',
  name: 'Network cable, 24 AWG copper-clad aluminium, one pair of its four',
  material: COPPER_CLAD_ALUMINIUM,
  pairs: 1,
  kgPerKm: CCA_KG_PER_KM,
  spread: { loopOhmPerKm: 12 },
  sources: {
    kgPerKm: derivedOnMemory('That of copper cable, less what the lighter metal saves.'),
    'spread.loopOhmPerKm': allowance(
      'Allowance: such cable follows no standard, and is often thinner than it says.',
    ),
  },
}

const SOLID: Parameters<typeof networkCable>[0] = {
  id: 'network-24',
  name: 'Network cable, 24 AWG solid copper, one pair of its four',
  material: COPPER,
  pairs: 1,
  kgPerKm: NETWORK_KG_PER_KM,
  spread: {},
  sources: {},
}

export const NETWORK_CABLES: readonly Wire[] = [
  networkCable(SOLID),
  networkCable({
    ...SOLID,
    id: 'network-24-two',
    name: 'Network cable, 24 AWG solid copper, two of its pairs as one',
    pairs: 2,
  }),
  networkCable(CCA),
  networkCable({
    ...CCA,
    id: 'network-cca-24-two',
    name: 'Network cable, 24 AWG copper-clad aluminium, two of its pairs as one',
    pairs: 2,
  }),
]
