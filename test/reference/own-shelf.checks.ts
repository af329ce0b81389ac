import { abs } from '../../src/budget/complex'
import { ringerOhm } from '../../src/budget/ringer'
import { awgDiameterMm } from '../../src/catalog/awg'
import { ampHoursAt, type Cell, voltsWhenUsed } from '../../src/catalog/cell'
import { CELLS } from '../../src/catalog/cells'
import { conductorOhmPerKm, solid } from '../../src/catalog/conductor'
import { COPPER } from '../../src/catalog/conductor-materials'
import { ringerOfEquivalents } from '../../src/catalog/ringer-equivalent'
import { wireImpedanceRatio } from '../../src/catalog/skin-effect'
import { METRES_PER_FOOT } from '../../src/units'
import { builtInSet, builtInWire } from './built-in-entry'
import { checks } from './check'

const copperOhmPerKm = (diameterMm: number) => conductorOhmPerKm(solid(COPPER, diameterMm))
const PER_FOOT = METRES_PER_FOOT / 1000

const cords = [
  ...checks(
    {
      source: {
        work: 'Manual of a loudspeaker maker',
        place: 'p. 9: measured cords, Ω per foot of the pair',
      },
      tolerancePct: 5.5,
      because: 'cords are measured to two digits, and makers are free with the gauge',
    },
    (
      [
        [12, 0.0033],
        [14, 0.0048],
      ] as const
    ).map(([gauge, ohms]) => ({
      what: `pair of ${gauge} AWG`,
      unit: 'Ω/ft',
      published: ohms,
      computed: 2 * copperOhmPerKm(awgDiameterMm(gauge)) * PER_FOOT,
    })),
  ),
  ...checks(
    {
      source: {
        work: 'Manual of a loudspeaker maker',
        place: 'p. 9: measured cords, Ω per foot of the pair',
      },
      tolerancePct: 2,
      because: 'cords are measured to two or three digits',
    },
    (
      [
        [16, 0.0079],
        [18, 0.0128],
      ] as const
    ).map(([gauge, ohms]) => ({
      what: `speaker wire of ${gauge} AWG`,
      unit: 'Ω/ft',
      published: ohms,
      computed: builtInWire(`speaker-${gauge}`).loopOhmPerKm * PER_FOOT,
    })),
  ),
  ...checks(
    {
      source: {
        work: 'Interview on loudspeaker cable, web page (2005)',
        place: 'table of resistance at 20 °C',
      },
      tolerancePct: 3,
      because: 'the table takes copper at 0.0168 Ω·mm²/m, 2.6 % better than the standard',
    },
    (
      [
        [0.75, 4, 0.179],
        [1.5, 8, 0.179],
        [2.5, 8, 0.108],
        [4, 8, 0.067],
      ] as const
    ).map(([mm2, lengthM, ohms]) => ({
      what: `${lengthM} m of a pair of ${mm2} mm²`,
      unit: 'Ω',
      published: ohms,
      computed: (2 * lengthM * copperOhmPerKm(Math.sqrt((4 * mm2) / Math.PI))) / 1000,
    })),
  ),
  ...checks(
    {
      source: {
        work: 'Network encyclopedia, entry on category 5 cabling',
        place: 'table of characteristics',
      },
      tolerancePct: 0,
      because: 'the standard gives the most allowed',
      bound: 'at most',
    },
    [
      {
        what: 'one wire of network cable',
        unit: 'Ω/1000 ft',
        published: 28.6,
        computed: (builtInWire('network-24').loopOhmPerKm / 2) * METRES_PER_FOOT,
      },
      {
        what: 'capacitance of a pair of it',
        unit: 'pF/ft',
        published: 18,
        computed: builtInWire('network-24').nanoFPerKm * METRES_PER_FOOT,
      },
    ],
  ),
]

const MU_0 = 4e-7 * Math.PI
const skin = checks(
  {
    source: {
      work: 'F. E. Terman, Radio Engineers’ Handbook, as a forum quotes its table',
      place: 'ratio of resistance of 10 AWG copper at 100 kHz',
    },
    tolerancePct: 0.8,
    because: 'the table is read between its steps',
  },
  [
    {
      what: 'R/R₀',
      unit: '',
      published: 3.35,
      computed: wireImpedanceRatio(
        Math.sqrt((2 * Math.PI * 1e5 * MU_0) / ((Math.PI * copperOhmPerKm(awgDiameterMm(10))) / 1000)),
      ).re,
    },
  ],
)

const cell = (id: string): Cell => CELLS.find((each) => each.id === id)!

const cells = [
  ...checks(
    {
      source: {
        work: 'Mailing list of builders of electric cars',
        place: 'volts of flooded lead-acid at rest',
      },
      tolerancePct: 1,
      because: 'tenths of a volt; the built-in curve is that of an absorbed-glass-mat battery',
    },
    (
      [
        [75, 12.4],
        [50, 12.2],
      ] as const
    ).map(([pct, volts]) => ({
      what: `charged to ${pct} %`,
      unit: 'V',
      published: volts,
      computed: voltsWhenUsed(cell('lead-acid-12'), 1 - pct / 100),
    })),
  ),
  ...checks(
    {
      source: {
        work: 'Data sheet of a sealed lead-acid battery of 1.3 Ah',
        place: 'capacity over 5 hours and 1 hour',
      },
      tolerancePct: 9,
      because: 'small batteries give a little less over five hours and a little more over one',
    },
    (
      [
        [5, 1.05],
        [1, 0.85],
      ] as const
    ).map(([hours, ampHours]) => ({
      what: `share of the rating over ${hours} h`,
      unit: '',
      published: ampHours / 1.3,
      computed: ampHoursAt(cell('lead-acid-12'), (7000 * (ampHours / 1.3)) / hours, 20) / 7,
    })),
  ),
  ...checks(
    {
      source: { work: 'Test page on dry cells, quoting a maker', place: 'AA cells, some hours a day' },
      tolerancePct: 0,
      because: 'a rest between calls gives more than a drain without end, for which the catalog stands',
      bound: 'at most',
    },
    (
      [
        [50, 2.9],
        [100, 2.7],
        [250, 2.3],
        [500, 2],
      ] as const
    ).map(([drainMA, ampHours]) => ({
      what: `AA cell at ${drainMA} mA`,
      unit: 'Ah',
      published: ampHours,
      computed: ampHoursAt(cell('lr6'), drainMA, 20),
    })),
  ),
  ...checks(
    {
      source: { work: 'Web article on D cells', place: 'capacities of three makers' },
      tolerancePct: 6,
      because: 'two of the three have 17 Ah, one 18',
    },
    [{ what: 'alkaline D cell', unit: 'Ah', published: 17, computed: cell('lr20').ampHours }],
  ),
  ...checks(
    {
      source: { work: 'Page of 9 V battery equivalents (2023)', place: 'capacity of an alkaline battery' },
      tolerancePct: 0,
      because: 'a range of 550 to 600 mAh at no stated drain: the catalog promises no more',
      bound: 'at most',
    },
    [{ what: 'alkaline 9 V battery', unit: 'Ah', published: 0.6, computed: cell('6lr61').ampHours }],
  ),
]

/** The two diodes of the bridge that a set has before its chip, V. */
const BRIDGE_VOLTS = 1.4
const { dropVolts = 0, dcOhms } = builtInSet('desk-chirper').offHook
const electronic = [
  ...checks(
    {
      source: {
        work: 'Data sheet of a speech chip for telephones (1994)',
        place: 'quick reference data: line voltage at 15 mA',
      },
      tolerancePct: 2,
      because: 'the chip’s own drain of 1.4 mA does not pass its slope resistor',
    },
    [
      {
        what: 'electronic set behind its bridge, at 15 mA',
        unit: 'V',
        published: 4.45,
        computed: dropVolts - BRIDGE_VOLTS + 0.015 * dcOhms,
      },
    ],
  ),
  ...checks(
    {
      source: { work: 'Data sheet of a speech and listening-in chip (1994)', place: 'voltage at SLPE' },
      tolerancePct: 6,
      because: 'another chip of the family, without its slope',
    },
    [{ what: 'what it keeps', unit: 'V', published: 4.45, computed: dropVolts - BRIDGE_VOLTS }],
  ),
  ...checks(
    {
      source: {
        work: 'Data sheet of a ringing line interface for voice gateways (2001)',
        place: 'table 17: load of 5 ringer equivalents',
      },
      tolerancePct: 0.5,
      because: 'rounded to ten ohms',
    },
    [
      { what: 'its resistance', unit: 'Ω', published: 1380, computed: ringerOfEquivalents(5, 40).ohms },
      {
        what: 'its impedance at 20 Hz',
        unit: 'Ω',
        published: Math.hypot(1380, 1e6 / (2 * Math.PI * 20 * 40)),
        computed: abs(ringerOhm(ringerOfEquivalents(5, 40), 20)),
      },
    ],
  ),
]

export const OWN_SHELF_CHECKS = [...cords, ...skin, ...cells, ...electronic]
