import { KG_PER_POUND, METRES_PER_MILE, MM_PER_INCH, NEWTONS_PER_POUND_FORCE } from '../units'
import { awgDiameterMm } from './awg'
import { type Conductor, conductorOhmPerKm, conductorTempCoeffPerC, helixTakeUp, solid } from './conductor'
import { ALUMINIUM, CADMIUM_COPPER, COPPER, GALVANISED_STEEL } from './conductor-materials'
import { fitNanoFPerKm } from './fit-line-constants'
import type { Sources } from './sources'
import type { Wire } from './wire'

const KM_PER_MILE = METRES_PER_MILE / 1000
const TABLE = 'US Army Signal subcourse SS0440, table 1-1'

/** A handbook's line on a field wire: make-up, loss at 1 kHz and 68 °F, mass and strength. */
interface FieldWire {
  readonly id: string
  readonly name: string
  readonly conductor: Conductor
  readonly dryDbPerMile: number
  readonly wetDbPerMile: number
  readonly lossSource: string
  readonly poundsPerMile: number
  readonly breakPounds: number
  readonly miles: readonly number[]
  readonly source: string
  readonly sources: Sources
}

const LOSS_HZ = 1000
const LOOP_MILLI_H_PER_KM = 0.6
const DRY_MICRO_S_PER_KM = 0.5
const WET_MICRO_S_PER_KM = 25

/** The handbook gives loss and make-up; the capacitances are those that give its loss, dry and wet. */
function fieldWire(w: FieldWire): Wire {
  const series = {
    loopOhmPerKm: 2 * conductorOhmPerKm(w.conductor),
    loopMilliHPerKm: LOOP_MILLI_H_PER_KM,
  }
  const loss = (dbPerMile: number) => ({ dbPerKm: dbPerMile / KM_PER_MILE, hz: LOSS_HZ })
  const [dry, wet] = [w.dryDbPerMile, w.wetDbPerMile].map((db) => `${Number(db.toFixed(2))} dB per mile`)
  const nanoFPerKm = fitNanoFPerKm(series, { microSPerKm: DRY_MICRO_S_PER_KM }, loss(w.dryDbPerMile))
  return {
    id: w.id,
    name: w.name,
    ...series,
    tempCoeffPerC: conductorTempCoeffPerC(w.conductor),
    nanoFPerKm,
    dryMicroSPerKm: DRY_MICRO_S_PER_KM,
    wetMicroSPerKm: WET_MICRO_S_PER_KM,
    wetNanoFPerKm: fitNanoFPerKm(series, { microSPerKm: WET_MICRO_S_PER_KM }, loss(w.wetDbPerMile)),
    kgPerKm: (w.poundsPerMile * KG_PER_POUND) / KM_PER_MILE,
    breakN: w.breakPounds * NEWTONS_PER_POUND_FORCE,
    spoolsM: w.miles.map((miles) => miles * METRES_PER_MILE),
    source: w.source,
    sources: {
      tempCoeffPerC: 'Derived: the coefficients of the strands, weighted by their conductance.',
      loopMilliHPerKm: 'About 1 mH per mile, from memory; it hardly matters beside the resistance.',
      nanoFPerKm: `Derived: fitted so that the dry line loses ${dry} at 1 kHz (${w.lossSource}).`,
      dryMicroSPerKm: 'A dry polyethylene or rubber pair with sound splices, from memory.',
      wetMicroSPerKm:
        'Wet polyethylene or rubber field wire with average splices, 1 to 50 µS/km, from memory: the middle of that.',
      wetNanoFPerKm: `Derived: fitted so that the wet line loses ${wet} at 1 kHz (${w.lossSource}). The film of water raises the capacitance far more than the leakage.`,
      ...w.sources,
    },
  }
}

/** Loss over which local-battery sets are planned to talk, dB: from memory. */
const PLANNED_LOSS_DB = 30

const STRAND_MM = 0.011 * MM_PER_INCH
const STRAND_LAY_MM = MM_PER_INCH

/** Four copper and three steel strands of one size, six of them laid round the seventh. */
const copperSteelConductor = (strandMm: number): Conductor => ({
  strands: [
    { count: 4, diameterMm: strandMm, material: COPPER },
    { count: 3, diameterMm: strandMm, material: GALVANISED_STEEL },
  ],
  takeUp: helixTakeUp(2 * strandMm, STRAND_LAY_MM),
})

const handbook: Sources = {
  kgPerKm: `${TABLE}.`,
  breakN: `${TABLE}: the whole run.`,
  spoolsM: `${TABLE}.`,
}

export const FIELD_WIRES: readonly Wire[] = [
  fieldWire({
    id: 'wd-1a',
    name: 'Field wire WD-1A/TT',
    conductor: copperSteelConductor(STRAND_MM),
    dryDbPerMile: 1.5,
    wetDbPerMile: 2.5,
    lossSource: TABLE,
    poundsPerMile: 48,
    breakPounds: 200,
    miles: [1 / 4, 1 / 2, 1, 2.5],
    source: `${TABLE}; make-up from MIL-DTL-49104C, 3.2.2 to 3.3`,
    sources: {
      ...handbook,
      loopOhmPerKm:
        'Derived: 4 tinned copper and 3 galvanised steel strands of 0.011 in at 1 in lay, in parallel (make-up: MIL-DTL-49104C, 3.2.2 to 3.3; the copper strands taken as thick as the steel ones).',
    },
  }),
  fieldWire({
    id: 'wf-16',
    name: 'Field wire WF-16/U, one pair of its two',
    conductor: {
      strands: [{ count: 7, diameterMm: STRAND_MM, material: CADMIUM_COPPER }],
      takeUp: helixTakeUp(2 * STRAND_MM, STRAND_LAY_MM),
    },
    dryDbPerMile: 2,
    wetDbPerMile: 2.6,
    lossSource: TABLE,
    poundsPerMile: 62 / 2,
    breakPounds: 200 / 2,
    miles: [1],
    source: `${TABLE}; strand sizes from memory`,
    sources: {
      ...handbook,
      loopOhmPerKm:
        'Derived: 7 strands of copper-cadmium alloy in parallel; that they are stranded alloy is in SS0440, their size and number are from memory.',
      kgPerKm: `${TABLE}: half of the four-conductor wire.`,
      breakN: `${TABLE}: half of the four-conductor wire.`,
    },
  }),
  fieldWire({
    id: 'wd-36',
    name: 'Assault wire WD-36/TT',
    conductor: solid(ALUMINIUM, awgDiameterMm(23)),
    dryDbPerMile: 3.6,
    wetDbPerMile: 5.9,
    lossSource: TABLE,
    poundsPerMile: 8.5,
    breakPounds: 25,
    miles: [1 / 4, 1 / 2],
    source: TABLE,
    sources: {
      ...handbook,
      loopOhmPerKm: 'Derived: solid aluminium of 23 AWG (SS0440, table 1-1; ASTM B258).',
    },
  }),
  fieldWire({
    id: 'w-110-b',
    name: 'Field wire W-110-B',
    conductor: copperSteelConductor(0.0125 * MM_PER_INCH),
    dryDbPerMile: PLANNED_LOSS_DB / 17,
    wetDbPerMile: PLANNED_LOSS_DB / 11,
    lossSource: 'derived: local-battery sets quoted to talk over 11 to 17 miles of it, at 30 dB',
    poundsPerMile: 130,
    breakPounds: 300,
    miles: [1, 2.5],
    source: 'US Army Signal subcourse SS0330, p. 117 (4 copper and 3 steel strands); figures from memory',
    sources: {
      loopOhmPerKm:
        'Derived: 4 copper and 3 steel strands (SS0330, p. 117) of 0.0125 in at 1 in lay; the strand size is from memory.',
      kgPerKm: 'About 130 lb per mile, from memory.',
      breakN: 'From memory.',
      spoolsM: 'From memory.',
    },
  }),
]
