import { KG_PER_POUND, METRES_PER_MILE, MM_PER_INCH, NEWTONS_PER_POUND_FORCE } from '../units'
import { awgDiameterMm } from './awg'
import {
  type Conductor,
  conductorOhmPerKm,
  conductorTempCoeffPerC,
  helixTakeUp,
  solid,
  stretchOfConductors,
  stretchSources,
} from './conductor'
import { ALUMINIUM, CADMIUM_COPPER, COPPER, GALVANISED_STEEL } from './conductor-materials'
import { fitNanoFPerKm } from './fit-line-constants'
import {
  allowance,
  derived,
  derivedOnMemory,
  fromMemory,
  read,
  type Source,
  type Sources,
  type Spread,
} from './sources'
import type { Wire } from './wire'

const KM_PER_MILE = METRES_PER_MILE / 1000
const TABLE = 'US Army Signal subcourse SS0440, table 1-1'
const LOSSES = read(TABLE)

/** A handbook's line on a field wire: make-up, loss at 1 kHz and 68 °F, mass and strength. */
interface FieldWire {
  readonly id: string
  readonly name: string
  readonly conductor: Conductor
  readonly dryDbPerMile: number
  readonly wetDbPerMile: number
  /** Where the losses stand; a bare sentence for those that a table gives. */
  readonly lossSource: Source
  readonly poundsPerMile: number
  readonly breakPounds: number
  readonly miles: readonly number[]
  readonly outsideMm?: number
  readonly source: string
  readonly sources: Sources
  readonly spread?: Spread
}

const LOSS_HZ = 1000
const LOOP_MILLI_H_PER_KM = 0.6
const DRY_MICRO_S_PER_KM = 0.5
const WET_MICRO_S_PER_KM = 25
const WORN_MICRO_S_PER_KM = 250

/** How far field wire lies from its figures. Readings of a person's own wire are better than any of them. */
const FIELD_SPREAD: Spread = {
  loopOhmPerKm: 8,
  nanoFPerKm: 15,
  wetNanoFPerKm: 25,
  loopMilliHPerKm: 30,
  dryMicroSPerKm: 300,
  wetMicroSPerKm: 200,
  wornMicroSPerKm: 150,
  kgPerKm: 5,
  breakN: 15,
}
const FIELD_SPREAD_SOURCES: Sources = {
  spread: allowance('Allowance: no paper that was read says how much lots of one wire differ.'),
  'spread.loopOhmPerKm': fromMemory('200 to 234 Ω per mile are remembered for WD-1A/TT.'),
  'spread.wetMicroSPerKm': fromMemory('1 to 50 µS/km with average splices, from memory.'),
  'spread.wornMicroSPerKm': fromMemory('100 to 500 µS/km, from memory.'),
}

/** The handbook gives loss and make-up; the capacitances are those that give its loss, dry and wet. */
function fieldWire(w: FieldWire): Wire {
  const series = {
    loopOhmPerKm: 2 * conductorOhmPerKm(w.conductor),
    loopMilliHPerKm: LOOP_MILLI_H_PER_KM,
  }
  const loss = (dbPerMile: number) => ({ dbPerKm: dbPerMile / KM_PER_MILE, hz: LOSS_HZ })
  const [dry, wet] = [w.dryDbPerMile, w.wetDbPerMile].map((db) => `${Number(db.toFixed(2))} dB per mile`)
  const fitted = (says: string): Source =>
    (w.lossSource.kind === 'read' ? derived : derivedOnMemory)(`${says}.`)
  const nanoFPerKm = fitNanoFPerKm(series, { microSPerKm: DRY_MICRO_S_PER_KM }, loss(w.dryDbPerMile))
  return {
    id: w.id,
    name: w.name,
    ...series,
    tempCoeffPerC: conductorTempCoeffPerC(w.conductor),
    nanoFPerKm,
    dryMicroSPerKm: DRY_MICRO_S_PER_KM,
    wetMicroSPerKm: WET_MICRO_S_PER_KM,
    wornMicroSPerKm: WORN_MICRO_S_PER_KM,
    wetNanoFPerKm: fitNanoFPerKm(series, { microSPerKm: WET_MICRO_S_PER_KM }, loss(w.wetDbPerMile)),
    kgPerKm: (w.poundsPerMile * KG_PER_POUND) / KM_PER_MILE,
    breakN: w.breakPounds * NEWTONS_PER_POUND_FORCE,
    spoolsM: w.miles.map((miles) => miles * METRES_PER_MILE),
    ...stretchOfConductors(w.conductor, 2),
    ...(w.outsideMm !== undefined && { outsideMm: w.outsideMm }),
    source: w.source,
    sources: {
      tempCoeffPerC: derivedOnMemory('The coefficients of the strands, weighted by their conductance.'),
      loopMilliHPerKm: fromMemory(
        'About 1 mH per mile, from memory; it hardly matters beside the resistance.',
      ),
      nanoFPerKm: fitted(`Fitted so that the dry line loses ${dry} at 1 kHz (${w.lossSource.says})`),
      dryMicroSPerKm: fromMemory('A dry polyethylene or rubber pair with sound splices, from memory.'),
      wetMicroSPerKm: fromMemory(
        'Wet polyethylene or rubber field wire with average splices, 1 to 50 µS/km, from memory: the middle of that.',
      ),
      wornMicroSPerKm: fromMemory(
        'Old, nicked or damaged wire, 100 to 500 µS/km, from memory: the middle of that.',
      ),
      wetNanoFPerKm: fitted(
        `Fitted so that the wet line loses ${wet} at 1 kHz (${w.lossSource.says}); the film of water raises the capacitance far more than the leakage`,
      ),
      outsideMm: fromMemory(
        'From memory: two wires of about 2 mm side by side, as wide as a rod of this size.',
      ),
      ...stretchSources(w.conductor),
      ...FIELD_SPREAD_SOURCES,
      ...w.sources,
    },
    spread: { ...FIELD_SPREAD, ...w.spread },
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
  kgPerKm: read(`${TABLE}.`),
  breakN: read(`${TABLE}: the whole run.`),
  spoolsM: read(`${TABLE}.`),
}

export const FIELD_WIRES: readonly Wire[] = [
  fieldWire({
    id: 'wd-1a',
    name: 'Field wire WD-1A/TT',
    conductor: copperSteelConductor(STRAND_MM),
    dryDbPerMile: 1.5,
    wetDbPerMile: 2.5,
    lossSource: LOSSES,
    poundsPerMile: 48,
    breakPounds: 200,
    miles: [1 / 4, 1 / 2, 1, 2.5],
    outsideMm: 4,
    source: `${TABLE}; make-up from MIL-DTL-49104C, 3.2.2 to 3.3`,
    sources: {
      ...handbook,
      loopOhmPerKm: derived(
        '4 tinned copper and 3 galvanised steel strands of 0.011 in at 1 in lay, in parallel (make-up: MIL-DTL-49104C, 3.2.2 to 3.3; the copper strands taken as thick as the steel ones).',
      ),
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
    lossSource: LOSSES,
    poundsPerMile: 62 / 2,
    breakPounds: 200 / 2,
    miles: [1],
    source: `${TABLE}; its resistance from memory, and doubtful`,
    sources: {
      ...handbook,
      loopOhmPerKm: derivedOnMemory(
        '7 strands of copper-cadmium alloy in parallel. That they are stranded alloy is in SS0440; their size and number are from memory, and hang badly together with the printed loss: at 130 Ω/km the capacitance would be that of other field wire.',
      ),
      kgPerKm: read(`${TABLE}: half of the four-conductor wire.`),
      breakN: read(`${TABLE}: half of the four-conductor wire.`),
      'spread.loopOhmPerKm': allowance('Allowance: the make-up was not found; it reaches to 130 Ω/km.'),
      'spread.nanoFPerKm': allowance(
        'Allowance: as wide as that of the resistance, since their product is what was read.',
      ),
      'spread.wetNanoFPerKm': allowance('Allowance: as that of the dry wire.'),
    },
    spread: { loopOhmPerKm: 40, nanoFPerKm: 40, wetNanoFPerKm: 40 },
  }),
  fieldWire({
    id: 'wd-36',
    name: 'Assault wire WD-36/TT',
    conductor: solid(ALUMINIUM, awgDiameterMm(23)),
    dryDbPerMile: 3.6,
    wetDbPerMile: 5.9,
    lossSource: LOSSES,
    poundsPerMile: 8.5,
    breakPounds: 25,
    miles: [1 / 4, 1 / 2],
    source: TABLE,
    sources: {
      ...handbook,
      loopOhmPerKm: derivedOnMemory(
        'Solid aluminium of 23 AWG (SS0440, table 1-1; ASTM B258), at 61 % of the conductivity of copper, from memory.',
      ),
    },
  }),
  fieldWire({
    id: 'w-110-b',
    name: 'Field wire W-110-B',
    conductor: copperSteelConductor(0.0125 * MM_PER_INCH),
    dryDbPerMile: PLANNED_LOSS_DB / 17,
    wetDbPerMile: PLANNED_LOSS_DB / 11,
    lossSource: fromMemory(
      'local-battery sets are quoted to talk over 11 to 17 miles, at 30 dB; the page that says so does not name the wire',
    ),
    poundsPerMile: 130,
    breakPounds: 300,
    miles: [1, 2.5],
    outsideMm: 6,
    source: 'US Army Signal subcourse SS0330, p. 117 (4 copper and 3 steel strands); all figures from memory',
    sources: {
      loopOhmPerKm: derivedOnMemory(
        '4 copper and 3 steel strands (SS0330, p. 117) of 0.0125 in at 1 in lay; the strand size is from memory.',
      ),
      kgPerKm: fromMemory('About 130 lb per mile, from memory.'),
      breakN: fromMemory('From memory.'),
      spoolsM: fromMemory('From memory.'),
      'spread.nanoFPerKm': allowance('Allowance: 11 to 17 miles are a wide range.'),
    },
    spread: { loopOhmPerKm: 20, nanoFPerKm: 60, wetNanoFPerKm: 60, kgPerKm: 20 },
  }),
]
