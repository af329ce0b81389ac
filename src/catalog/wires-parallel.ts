import { METRES_PER_FOOT, MM_PER_INCH } from '../units'
import { awgDiameterMm } from './awg'
import { solid } from './conductor'
import { COPPER, COPPER_CLAD_STEEL_30, GALVANISED_STEEL, HARD_DRAWN_COPPER } from './conductor-materials'
import { parallelWire } from './parallel-wire'
import { derivedOnMemory, read } from './sources'
import type { Wire } from './wire'

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
