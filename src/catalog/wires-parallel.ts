import { METRES_PER_FOOT, MM_PER_INCH } from '../units'
import { awgDiameterMm } from './awg'
import { fromMetal } from './cable-pair'
import {
  type Conductor,
  conductorBreakN,
  conductorKgPerKm,
  conductorOhmPerKm,
  conductorTempCoeffPerC,
  STRETCH_SOURCES,
  solid,
  stretchOfConductors,
} from './conductor'
import { COPPER, COPPER_CLAD_STEEL_30, GALVANISED_STEEL, HARD_DRAWN_COPPER } from './conductor-materials'
import { type PairGeometry, pairMilliHPerKm, pairNanoFPerKm } from './pair-geometry'
import {
  allowance,
  derived,
  derivedOnMemory,
  fromMemory,
  practice,
  read,
  type Sources,
  type Spread,
} from './sources'
import type { Wire } from './wire'

/** A film of water round a pair without a jacket raises its capacitance by half: an allowance; field wire's rises nearly threefold. */
const WET_FILM = 1.5

const BARE_SPREAD: Spread = {
  loopOhmPerKm: 5,
  nanoFPerKm: 20,
  loopMilliHPerKm: 20,
  dryMicroSPerKm: 300,
  wetMicroSPerKm: 300,
  kgPerKm: 10,
  breakN: 20,
}
const COVERED_SPREAD: Spread = { ...BARE_SPREAD, wetNanoFPerKm: 40, wornMicroSPerKm: 200 }

/** Two conductors side by side: inductance and capacitance follow from how far apart they are. */
function parallelWire(w: {
  readonly id: string
  readonly name: string
  readonly conductor: Conductor
  readonly geometry: PairGeometry
  readonly relativePermittivity: number
  readonly relativePermeability?: number
  readonly dryMicroSPerKm: number
  readonly wetMicroSPerKm: number
  readonly wornMicroSPerKm?: number
  readonly insulationKgPerKm: number
  readonly outsideMm: number
  readonly spoolsM: readonly number[]
  readonly source: string
  readonly makeUp: string
  readonly leakage: string
  /** Figures that were read or measured, in the place of those that follow from the make-up, and what speaks for them. */
  readonly known?: Partial<Wire>
  readonly sources?: Sources
  readonly spread?: Spread
}): Wire {
  const bare = w.relativePermittivity === 1
  const { material } = w.conductor.strands[0]!
  const nanoFPerKm = w.known?.nanoFPerKm ?? pairNanoFPerKm(w.geometry, w.relativePermittivity)
  const apart = `Two round wires ${w.geometry.spacingMm.toFixed(1)} mm apart`
  const leakage = fromMemory(w.leakage)
  return {
    id: w.id,
    name: w.name,
    loopOhmPerKm: 2 * conductorOhmPerKm(w.conductor),
    tempCoeffPerC: conductorTempCoeffPerC(w.conductor),
    nanoFPerKm,
    loopMilliHPerKm: pairMilliHPerKm(w.geometry, w.relativePermeability ?? 1),
    dryMicroSPerKm: w.dryMicroSPerKm,
    wetMicroSPerKm: w.wetMicroSPerKm,
    ...(bare ? {} : { wetNanoFPerKm: nanoFPerKm * WET_FILM, wornMicroSPerKm: w.wornMicroSPerKm ?? 250 }),
    kgPerKm: 2 * conductorKgPerKm(w.conductor) + w.insulationKgPerKm,
    breakN: 2 * conductorBreakN(w.conductor),
    spoolsM: w.spoolsM,
    ...stretchOfConductors(w.conductor, 2),
    ...(w.relativePermeability !== undefined && { relativePermeability: w.relativePermeability }),
    outsideMm: w.outsideMm,
    ...(bare && { hangsApart: 2 }),
    source: w.source,
    ...w.known,
    sources: {
      loopOhmPerKm: fromMetal(`From ${w.makeUp}`, material.sources.ohmMm2PerM),
      tempCoeffPerC: fromMetal('The metal’s', material.sources.tempCoeffPerC),
      nanoFPerKm: bare
        ? derived(`${apart} in air.`)
        : derivedOnMemory(`${apart} in an effective permittivity of ${w.relativePermittivity}, from memory.`),
      loopMilliHPerKm:
        w.relativePermeability === undefined
          ? derived(`${apart}.`)
          : derivedOnMemory(
              `${apart}, with a relative permeability of ${w.relativePermeability} from memory.`,
            ),
      relativePermeability: fromMemory(
        'From memory: about 100 for soft iron and steel at telephone currents; tables have 80 to 200.',
      ),
      dryMicroSPerKm: leakage,
      wetMicroSPerKm: leakage,
      wetNanoFPerKm: allowance('Allowance: half more than dry for the film of water round it.'),
      wornMicroSPerKm: fromMemory('Old, nicked or damaged insulation, 100 to 500 µS/km, from memory.'),
      kgPerKm:
        w.insulationKgPerKm > 0
          ? derivedOnMemory(
              `The metal by its density, and ${w.insulationKgPerKm} kg/km of insulation from memory.`,
            )
          : fromMetal('The metal by its density', material.sources.kgPerM3),
      breakN: fromMetal(`Two wires of ${material.breakNPerMm2} N/mm²`, material.sources.breakNPerMm2),
      spoolsM: practice('Usual trade lengths.'),
      outsideMm: bare
        ? derived('The bare wire.')
        : derivedOnMemory('As wide as a rod of this size: two insulated wires, from memory.'),
      hangsApart: derived('Two bare wires, apart.'),
      ...STRETCH_SOURCES,
      spread: allowance('Allowance.'),
      ...w.sources,
    },
    spread: {
      ...(bare ? BARE_SPREAD : COVERED_SPREAD),
      ...(w.relativePermeability !== undefined && { relativePermeability: 100 }),
      ...w.spread,
    },
  }
}

const FOOT_MM = 12 * MM_PER_INCH
const feet = (...lengths: readonly number[]) => lengths.map((each) => each * METRES_PER_FOOT)
const CORD_LEAKAGE = 'Plastic cord with taped splices, from memory.'

const MEASURED = 'measured cords in a loudspeaker maker’s manual, p. 9'

/** Speaker wire as it is sold: two stranded wires side by side in clear vinyl. */
const speakerWire = (
  gauge: 16 | 18 | 22,
  spacingMm: number,
  insulationKgPerKm: number,
  measured?: { readonly picoFPerFoot: number; readonly microHPerFoot: number },
): Wire =>
  parallelWire({
    id: `speaker-${gauge}`,
    name: `Speaker wire, 2 × ${gauge} AWG stranded`,
    conductor: solid(COPPER, awgDiameterMm(gauge)),
    geometry: { spacingMm, diameterMm: 1.15 * awgDiameterMm(gauge) },
    relativePermittivity: 3,
    dryMicroSPerKm: 1,
    wetMicroSPerKm: 30,
    insulationKgPerKm,
    outsideMm: 1.5 * spacingMm,
    spoolsM: gauge === 16 ? feet(100, 250, 500) : feet(100, 500),
    source: `computed from the gauge (ASTM B258)${measured ? `; capacitance and inductance of ${MEASURED}` : ' and the spacing'}`,
    makeUp: `as much copper as a solid wire of ${gauge} AWG (ASTM B258); cheap wire has less, or is copper-clad aluminium`,
    leakage: CORD_LEAKAGE,
    ...(measured && {
      known: {
        nanoFPerKm: measured.picoFPerFoot / METRES_PER_FOOT,
        loopMilliHPerKm: measured.microHPerFoot / METRES_PER_FOOT,
      },
      sources: {
        nanoFPerKm: read(`${measured.picoFPerFoot} pF per foot: ${MEASURED}.`),
        loopMilliHPerKm: read(`${measured.microHPerFoot} µH per foot: ${MEASURED}.`),
      },
    }),
    spread: { loopOhmPerKm: 10, nanoFPerKm: 35 },
  })

export const PARALLEL_WIRES: readonly Wire[] = [
  speakerWire(16, 3, 18, { picoFPerFoot: 16, microHPerFoot: 0.18 }),
  speakerWire(18, 2.5, 14, { picoFPerFoot: 28, microHPerFoot: 0.21 }),
  speakerWire(22, 1.8, 8),
  parallelWire({
    id: 'lamp-cord-18',
    name: 'Lamp cord, 2 × 18 AWG stranded',
    conductor: {
      strands: [{ count: 41, diameterMm: awgDiameterMm(34), material: COPPER }],
      takeUp: 1.02,
    },
    geometry: { spacingMm: 2.8, diameterMm: 1.2 },
    relativePermittivity: 3,
    dryMicroSPerKm: 1,
    wetMicroSPerKm: 30,
    insulationKgPerKm: 15,
    outsideMm: 4.2,
    spoolsM: feet(250, 500, 1000),
    source: 'computed from 41 strands of 34 AWG and the spacing; insulation from memory',
    makeUp: '41 strands of 34 AWG of standard copper (ASTM B258) and 2 % for the stranding',
    leakage: CORD_LEAKAGE,
  }),
  parallelWire({
    id: 'bell-wire-20',
    name: 'Bell wire, 2 × 20 AWG solid',
    conductor: solid(COPPER, awgDiameterMm(20), 1.02),
    geometry: { spacingMm: 1.7, diameterMm: awgDiameterMm(20) },
    relativePermittivity: 3.5,
    dryMicroSPerKm: 1,
    wetMicroSPerKm: 30,
    insulationKgPerKm: 5,
    outsideMm: 2.6,
    spoolsM: feet(250, 500, 1000),
    source: 'computed from the gauge (ASTM B258) and the spacing; insulation from memory',
    makeUp: '20 AWG of standard copper (ASTM B258) and 2 % for the twist',
    leakage: 'Thin plastic on a twisted pair with taped splices, from memory.',
  }),
  parallelWire({
    id: 'bell-wire-0-2',
    name: 'Bell wire, thin, 2 × 0.2 mm² stranded',
    conductor: { strands: [{ count: 7, diameterMm: 0.19, material: COPPER }], takeUp: 1.02 },
    geometry: { spacingMm: 1.4, diameterMm: 0.57 },
    relativePermittivity: 3.2,
    dryMicroSPerKm: 1,
    wetMicroSPerKm: 30,
    insulationKgPerKm: 5,
    outsideMm: 2.1,
    spoolsM: [50, 100],
    source: 'computed from 7 strands of 0.19 mm, from memory, and the spacing',
    makeUp: '7 strands of 0.19 mm of standard copper, from memory, and 2 % for the stranding',
    leakage: CORD_LEAKAGE,
    sources: {
      loopOhmPerKm: derivedOnMemory('7 strands of 0.19 mm, from memory, and 2 % for the stranding.'),
    },
    spread: { loopOhmPerKm: 15 },
  }),
  parallelWire({
    id: 'drop-wire-18',
    name: 'Parallel drop wire, 2 × 18 AWG copper-clad steel',
    conductor: solid(COPPER_CLAD_STEEL_30, awgDiameterMm(18)),
    geometry: { spacingMm: 2.9, diameterMm: awgDiameterMm(18) },
    relativePermittivity: 2.6,
    dryMicroSPerKm: 0.5,
    wetMicroSPerKm: 10,
    insulationKgPerKm: 18,
    outsideMm: 4.5,
    spoolsM: feet(1000),
    source: 'computed from the gauge (ASTM B258), 30 % copper-clad steel (ASTM B227) and the spacing',
    makeUp: '18 AWG of 30 % copper-clad steel (ASTM B258, ASTM B227)',
    leakage: 'Thick plastic made to hang in the rain, from memory.',
  }),
  fenceWire('fence-steel-2-5', 2.5, [500], 'Two bare fence wires, galvanised steel 2.5 mm, 300 mm apart'),
  fenceWire('fence-steel-1-6', 1.6, [400], 'Two bare fence wires, galvanised steel 1.6 mm, 300 mm apart'),
  fenceWire('fence-steel-4', 4, [250], 'Two bare fence wires, soft galvanised steel 4 mm, 300 mm apart'),
  parallelWire({
    id: 'open-copper-104',
    name: 'Open wire, 0.104 in hard-drawn copper, 12 in apart',
    conductor: solid(HARD_DRAWN_COPPER, 0.104 * MM_PER_INCH),
    geometry: { spacingMm: FOOT_MM, diameterMm: 0.104 * MM_PER_INCH },
    relativePermittivity: 1,
    dryMicroSPerKm: 0.2,
    wetMicroSPerKm: 2,
    insulationKgPerKm: 0,
    outsideMm: 0.104 * MM_PER_INCH,
    spoolsM: [800],
    source: 'computed from diameter, hard-drawn copper and spacing; leakage from memory',
    makeUp: 'hard-drawn copper of 0.104 in',
    leakage: 'About 0.3 µS per mile dry and 2 to 5 wet on glass insulators, from memory.',
    spread: { loopOhmPerKm: 2, nanoFPerKm: 5, loopMilliHPerKm: 5 },
  }),
]

/** Two wires of a fence, as they stand. */
function fenceWire(id: string, diameterMm: number, spoolsM: readonly number[], name: string): Wire {
  return parallelWire({
    id,
    name,
    conductor: solid(GALVANISED_STEEL, diameterMm),
    geometry: { spacingMm: 300, diameterMm },
    relativePermittivity: 1,
    relativePermeability: 100,
    dryMicroSPerKm: 5,
    wetMicroSPerKm: 200,
    insulationKgPerKm: 0,
    outsideMm: diameterMm,
    spoolsM,
    source: 'computed from diameter, steel and spacing; leakage of fence insulators from memory',
    makeUp: `steel of ${diameterMm} mm`,
    leakage: 'Fence insulators and weeds, a guess from memory: measure before you rely on it.',
    spread: { loopOhmPerKm: 15, dryMicroSPerKm: 900, wetMicroSPerKm: 400 },
  })
}
