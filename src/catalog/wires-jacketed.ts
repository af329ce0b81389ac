import { awgDiameterMm } from './awg'
import { CABLE_SOURCES, CABLE_SPREAD, fromMetal, PAIR_TAKE_UP, TAKE_UP_SOURCE } from './cable-pair'
import {
  type Conductor,
  conductorBreakN,
  conductorKgPerKm,
  conductorOhmPerKm,
  conductorTempCoeffPerC,
  solid,
  stretchOfConductors,
  stretchSources,
} from './conductor'
import { ALUMINIUM, COPPER, type ConductorMaterial } from './conductor-materials'
import { derived, derivedOnMemory, fromMemory, practice, read } from './sources'
import type { Wire } from './wire'

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

const outsideMm = (diameterMm: number) => 2 * (diameterMm + 2 * INSULATION_MM) + 2 * JACKET_MM

/** One twisted pair of solid wire in polyethylene and a light jacket: everything follows from metal and diameter. */
function jacketedPair(pair: {
  readonly id: string
  readonly name: string
  readonly material: ConductorMaterial
  readonly diameterMm: number
  readonly diameterSource: string
}): Wire {
  const { material } = pair
  const wire = solid(material, pair.diameterMm, PAIR_TAKE_UP)
  return {
    id: pair.id,
    name: pair.name,
    loopOhmPerKm: 2 * conductorOhmPerKm(wire),
    tempCoeffPerC: conductorTempCoeffPerC(wire),
    nanoFPerKm: 52,
    loopMilliHPerKm: 0.62,
    dryMicroSPerKm: 0.1,
    wetMicroSPerKm: 1,
    wornMicroSPerKm: 50,
    kgPerKm: 2 * conductorKgPerKm(wire) + plasticKgPerKm(pair.diameterMm),
    breakN: 2 * conductorBreakN(wire),
    spoolsM: [305, 1000],
    ...stretchOfConductors(wire, 2),
    outsideMm: outsideMm(pair.diameterMm),
    source: `computed from ${pair.diameterSource} and the metal, with 1.8 % more wire than cable for the twist`,
    sources: {
      ...CABLE_SOURCES,
      ...stretchSources(wire),
      loopOhmPerKm: fromMetal(
        `From ${pair.diameterSource}, ${TAKE_UP_SOURCE}, and the metal`,
        material.sources.ohmMm2PerM,
      ),
      tempCoeffPerC: material.sources.tempCoeffPerC,
      kgPerKm: derivedOnMemory(
        'The metal, 0.25 mm of polyethylene on each wire and a jacket of 0.8 mm; thicknesses from memory.',
      ),
      breakN: fromMetal(
        `Two wires of ${material.breakNPerMm2} N/mm²; a jacket adds to it`,
        material.sources.breakNPerMm2,
      ),
      spoolsM: practice('Box of 1000 ft and reel of 1 km: common practice.'),
    },
    spread: CABLE_SPREAD,
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

/** Two stranded cores of an alarm cable of four. */
const ALARM_CORE: Conductor = {
  strands: [{ count: 7, diameterMm: 0.2, material: COPPER }],
  takeUp: 1.02,
}

const alarmCable: Wire = {
  id: 'alarm-0-22',
  name: 'Alarm cable, 0.22 mm² stranded copper, two of its four cores',
  loopOhmPerKm: 2 * conductorOhmPerKm(ALARM_CORE),
  tempCoeffPerC: conductorTempCoeffPerC(ALARM_CORE),
  nanoFPerKm: 90,
  loopMilliHPerKm: 0.65,
  dryMicroSPerKm: 1,
  wetMicroSPerKm: 5,
  wornMicroSPerKm: 100,
  kgPerKm: 20,
  breakN: 4 * conductorBreakN(ALARM_CORE),
  spoolsM: [100],
  ...stretchOfConductors(ALARM_CORE, 4),
  outsideMm: 3.8,
  source: '7 strands of 0.2 mm (a page on alarm cable to BS 4737); the rest from memory',
  sources: {
    ...CABLE_SOURCES,
    ...stretchSources(ALARM_CORE),
    loopOhmPerKm: derived(
      '7 strands of 0.2 mm of copper and 2 % for the twist: a page on alarm cable to BS 4737. Some is copper-clad aluminium.',
    ),
    tempCoeffPerC: COPPER.sources.tempCoeffPerC,
    nanoFPerKm: fromMemory('80 to 100 nF/km between two cores in vinyl, from memory.'),
    loopMilliHPerKm: fromMemory('From memory.'),
    dryMicroSPerKm: fromMemory('Vinyl leaks more than polyethylene: from memory.'),
    wetMicroSPerKm: fromMemory('A thin jacket made for indoors, from memory.'),
    kgPerKm: fromMemory('The whole cable of four cores, from memory.'),
    breakN: fromMetal('All four cores', COPPER.sources.breakNPerMm2),
    spoolsM: practice('Drums of 100 m: common practice.'),
    outsideMm: fromMemory('From memory.'),
    'spread.nanoFPerKm': fromMemory('From memory.'),
  },
  spread: { ...CABLE_SPREAD, loopOhmPerKm: 5, nanoFPerKm: 20 },
}

const dropWire: Wire = {
  ...jacketedPair({
    id: 'drop-wire-0-5',
    name: 'Drop wire for spans, copper pair of 0.5 mm with strength members',
    material: COPPER,
    diameterMm: 0.5,
    diameterSource: 'the diameter of 0.5 mm',
  }),
  kgPerKm: 24,
  breakN: 1350,
  spoolsM: [200, 500],
  outsideMm: 5,
}

export const JACKETED_PAIRS: readonly Wire[] = [
  ...[19, 20, 22, 23, 24, 26].map(copperPair),
  jacketedPair({
    id: 'aluminium-0-8',
    name: 'Twisted aluminium pair, 0.8 mm',
    material: ALUMINIUM,
    diameterMm: 0.8,
    diameterSource: 'the diameter of 0.8 mm',
  }),
  alarmCable,
  {
    ...dropWire,
    sources: {
      ...dropWire.sources,
      kgPerKm: fromMemory('From memory.'),
      breakN: read('1350 to 1550 N: data sheets of drop wire to CW 1406 and CW 1411; the lower is taken.'),
      spoolsM: practice('Coils of 200 and 500 m: common practice.'),
      outsideMm: fromMemory('From memory.'),
    },
  },
]
