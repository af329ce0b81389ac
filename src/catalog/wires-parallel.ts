import { METRES_PER_FOOT, MM_PER_INCH } from '../units'
import { awgDiameterMm } from './awg'
import {
  type Conductor,
  conductorBreakN,
  conductorKgPerKm,
  conductorOhmPerKm,
  conductorTempCoeffPerC,
  solid,
} from './conductor'
import { COPPER, COPPER_CLAD_STEEL_30, GALVANISED_STEEL, HARD_DRAWN_COPPER } from './conductor-materials'
import { type PairGeometry, pairMilliHPerKm, pairNanoFPerKm } from './pair-geometry'
import type { Wire } from './wire'

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
  readonly insulationKgPerKm: number
  readonly spoolsM: readonly number[]
  readonly source: string
  readonly makeUp: string
  readonly leakage: string
  readonly note?: string
}): Wire {
  const around =
    w.relativePermittivity === 1
      ? 'in air'
      : `in an effective permittivity of ${w.relativePermittivity}, from memory`
  const note = w.note === undefined ? '' : ` ${w.note}`
  return {
    id: w.id,
    name: w.name,
    loopOhmPerKm: 2 * conductorOhmPerKm(w.conductor),
    tempCoeffPerC: conductorTempCoeffPerC(w.conductor),
    nanoFPerKm: pairNanoFPerKm(w.geometry, w.relativePermittivity),
    loopMilliHPerKm: pairMilliHPerKm(w.geometry, w.relativePermeability ?? 1),
    dryMicroSPerKm: w.dryMicroSPerKm,
    wetMicroSPerKm: w.wetMicroSPerKm,
    kgPerKm: 2 * conductorKgPerKm(w.conductor) + w.insulationKgPerKm,
    breakN: 2 * conductorBreakN(w.conductor),
    spoolsM: w.spoolsM,
    source: w.source,
    sources: {
      loopOhmPerKm: `Derived: ${w.makeUp}.${note}`,
      tempCoeffPerC: `Derived: ${w.makeUp}.`,
      nanoFPerKm: `Derived: two round wires ${w.geometry.spacingMm.toFixed(1)} mm apart ${around}.`,
      loopMilliHPerKm: `Derived: two round wires ${w.geometry.spacingMm.toFixed(1)} mm apart${w.relativePermeability === undefined ? '' : `, with a relative permeability of ${w.relativePermeability} from memory`}.`,
      dryMicroSPerKm: w.leakage,
      wetMicroSPerKm: w.leakage,
      kgPerKm: `Derived: the metal by its density${w.insulationKgPerKm > 0 ? `, and ${w.insulationKgPerKm} kg/km of insulation from memory` : ''}.`,
      breakN: 'Derived: strength of the metal, from memory.',
      spoolsM: 'Usual trade lengths, from memory.',
    },
  }
}

const FOOT_MM = 12 * MM_PER_INCH
const HUNDREDS_OF_FEET_M = [250, 500, 1000].map((feet) => feet * METRES_PER_FOOT)

export const PARALLEL_WIRES: readonly Wire[] = [
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
    spoolsM: HUNDREDS_OF_FEET_M,
    source: 'computed from 41 strands of 34 AWG and the spacing; insulation from memory',
    makeUp: '41 strands of 34 AWG of standard copper (ASTM B258, IEC 60028) and 2 % for the stranding',
    leakage: 'Plastic cord with taped splices, from memory.',
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
    spoolsM: HUNDREDS_OF_FEET_M,
    source: 'computed from the gauge (ASTM B258) and the spacing; insulation from memory',
    makeUp: '20 AWG of standard copper (ASTM B258, IEC 60028) and 2 % for the twist',
    leakage: 'Thin plastic on a twisted pair with taped splices, from memory.',
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
    spoolsM: [1000 * METRES_PER_FOOT],
    source: 'computed from the gauge (ASTM B258), 30 % copper-clad steel (ASTM B227) and the spacing',
    makeUp: '18 AWG of 30 % copper-clad steel (ASTM B258, ASTM B227)',
    leakage: 'Thick plastic made to hang in the rain, from memory.',
  }),
  parallelWire({
    id: 'fence-steel-2-5',
    name: 'Two bare fence wires, galvanised steel 2.5 mm, 300 mm apart',
    conductor: solid(GALVANISED_STEEL, 2.5),
    geometry: { spacingMm: 300, diameterMm: 2.5 },
    relativePermittivity: 1,
    relativePermeability: 100,
    dryMicroSPerKm: 5,
    wetMicroSPerKm: 200,
    insulationKgPerKm: 0,
    spoolsM: [500],
    source: 'computed from diameter, steel and spacing; leakage of fence insulators from memory',
    makeUp: 'steel of 2.5 mm at 0.17 Ω·mm²/m from memory',
    leakage: 'Fence insulators and weeds, a guess from memory: measure before you rely on it.',
    note: 'This holds for direct current and ringing: at 1 kHz steel carries current in its skin only, so speech loses about a third more than the program shows.',
  }),
  parallelWire({
    id: 'open-copper-104',
    name: 'Open wire, 0.104 in hard-drawn copper, 12 in apart',
    conductor: solid(HARD_DRAWN_COPPER, 0.104 * MM_PER_INCH),
    geometry: { spacingMm: FOOT_MM, diameterMm: 0.104 * MM_PER_INCH },
    relativePermittivity: 1,
    dryMicroSPerKm: 0.2,
    wetMicroSPerKm: 2,
    insulationKgPerKm: 0,
    spoolsM: [800],
    source: 'computed from diameter, hard-drawn copper and spacing; leakage from memory',
    makeUp: 'hard-drawn copper of 0.104 in',
    leakage: 'About 0.3 µS per mile dry and 2 to 5 wet on glass insulators, from memory.',
  }),
]
