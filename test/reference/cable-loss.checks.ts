import { lineConstants } from '../../src/budget/line-constants'
import { METRES_PER_FOOT, METRES_PER_MILE } from '../../src/units'
import { builtInWire } from './built-in-entry'
import { checks } from './check'
import { KM_PER_MILE, lossDb, printedLine } from './published-line'

const lossOfWireDb = (id: string, weather: 'dry' | 'wet', hz: number) =>
  lossDb(lineConstants(builtInWire(id), weather, 20), hz)

const fieldWires = checks(
  {
    source: { work: 'US Army Signal subcourse SS0440', place: 'table 1-1, loss at 1 kHz and 68 °F' },
    tolerancePct: 0.01,
    because: 'the capacitance and the wet leakage of these wires are fitted to this very table',
    sameAsCode: true,
  },
  [
    { id: 'wd-1a', name: 'WD-1A/TT', dry: 1.5, wet: 2.5 },
    { id: 'wf-16', name: 'WF-16/U', dry: 2, wet: 2.6 },
    { id: 'wd-36', name: 'WD-36/TT', dry: 3.6, wet: 5.9 },
  ].flatMap(({ id, name, dry, wet }) => [
    {
      what: `${name}, dry`,
      unit: 'dB/mile',
      published: dry,
      computed: lossOfWireDb(id, 'dry', 1000) * KM_PER_MILE,
    },
    {
      what: `${name}, wet`,
      unit: 'dB/mile',
      published: wet,
      computed: lossOfWireDb(id, 'wet', 1000) * KM_PER_MILE,
    },
  ]),
)

const fieldWireLoop = checks(
  {
    source: { work: 'FM 24-20, Field Wire and Field Cable Techniques (1960)', place: 'from memory' },
    tolerancePct: 8,
    because: 'remembered as 200 to 234 Ω per mile at room temperature; the middle is taken',
  },
  [
    {
      what: 'loop of one mile of WD-1A/TT, from its strands',
      unit: 'Ω',
      published: 217,
      computed: (builtInWire('wd-1a').loopOhmPerKm * METRES_PER_MILE) / 1000,
    },
  ],
)

const exchangeCable = checks(
  {
    source: {
      work: 'Reference Data for Radio Engineers',
      place: 'exchange-area cable, loss per mile at 1 kHz, from memory',
    },
    tolerancePct: 3.5,
    because: 'R and C are printed, L (1 mH) and G (1.8 µS) are those usual for such cable',
  },
  [
    ['26 AWG (BST)', 440, 83, 2.9],
    ['26 AWG (ST)', 440, 69, 2.67],
    ['24 AWG (DSM)', 274, 85, 2.3],
    ['24 AWG (ASM)', 274, 75, 2.15],
    ['22 AWG (CSA)', 171, 83, 1.8],
    ['19 AWG (CNB)', 86, 85, 1.23],
    ['19 AWG (DNB)', 86, 66, 1.12],
    ['16 AWG (NH)', 42, 64, 0.76],
  ].map((row) => {
    const [name, ohm, nanoF, published] = row as [string, number, number, number]
    return {
      what: name,
      unit: 'dB/mile',
      published,
      computed: lossDb(printedLine({ ohm, milliH: 1, nanoF, microS: 1.8 }), 1000),
    }
  }),
)

const at800Hz = checks(
  {
    source: {
      work: 'R. L. Freeman, Telecommunication System Engineering',
      place: 'loss of subscriber cable per km at 800 Hz, from memory',
    },
    tolerancePct: 2.5,
    because: 'the built-in pairs have their twist counted in and a capacitance of 52 nF/km',
  },
  [
    [19, 0.71],
    [22, 1.01],
    [24, 1.27],
    [26, 1.61],
  ].map(([gauge, published]) => ({
    what: `${gauge} AWG pair`,
    unit: 'dB/km',
    published: published!,
    computed: lossOfWireDb(`copper-${gauge}`, 'dry', 800),
  })),
)

const UK_CABLES = 'table of British local cables: loss at 1600 Hz'
const ukCables = checks(
  {
    source: { work: 'Telephone cable modelling, web article', place: UK_CABLES },
    tolerancePct: 3,
    because: 'the table gives resistance and loss only; such cable has 45 to 60 nF/km, and 50 is taken',
  },
  [
    [0.32, 434, 2.8],
    [0.4, 275, 2.2],
    [0.5, 168, 1.79],
    [0.63, 109, 1.38],
    [0.9, 55, 1.04],
  ].map(([diameterMm, ohm, published]) => ({
    what: `${diameterMm} mm copper`,
    unit: 'dB/km',
    published: published!,
    computed: lossDb(printedLine({ ohm: ohm!, milliH: 0.65, nanoF: 50 }), 1600),
    ...(diameterMm === 0.9 && {
      tolerancePct: 7.5,
      because: 'its printed loss asks for 58 nF/km, at the upper end of what such cable has',
    }),
  })),
)

const sin351 = printedLine({ ohm: 168, milliH: 0.65, nanoF: 50 })
const interfaceDocument = [
  ...checks(
    {
      source: { work: 'Interface document SIN 351', place: '0.5 mm copper, 168 Ω/km, 50 nF/km' },
      tolerancePct: 3.5,
      because: 'two digits are printed',
    },
    [{ what: 'loss at 1600 Hz', unit: 'dB/km', published: 1.7, computed: lossDb(sin351, 1600) }],
  ),
  ...checks(
    {
      source: { work: 'Interface document SIN 351', place: 'most loss of a line at five frequencies' },
      tolerancePct: 3.5,
      because:
        'the length is not stated, so losses are compared with that at 1600 Hz; the document leaves out inductance',
    },
    [
      [200, 5.1],
      [400, 7.1],
      [3200, 20.1],
      [4000, 22.5],
    ].map(([hz, db]) => ({
      what: `loss at ${hz} Hz of the line that loses 14.2 dB at 1600 Hz`,
      unit: 'dB',
      published: db!,
      computed: (14.2 * lossDb(sin351, hz!)) / lossDb(sin351, 1600),
    })),
  ),
]

const longLoop = checks(
  {
    source: { work: 'Design notes on telephone lines, web page', place: 'non-loaded 26 AWG' },
    tolerancePct: 5,
    because: 'a round figure',
  },
  [
    {
      what: 'loss of 15 000 ft of 26 AWG pair at 1 kHz',
      unit: 'dB',
      published: 8,
      computed: 15 * METRES_PER_FOOT * lossOfWireDb('copper-26', 'dry', 1000),
    },
  ],
)

const loops = checks(
  {
    source: {
      work: 'ANSI T1.413 and ITU-T G.996.1, models of test loops',
      place: '24 AWG cable: constants at low frequency',
    },
    tolerancePct: 4.5,
    because: 'the standard models one make of cable; the built-in pair follows from its gauge',
  },
  [
    {
      what: 'loop resistance of 24 AWG',
      unit: 'Ω/km',
      published: 174.56,
      computed: builtInWire('copper-24').loopOhmPerKm,
    },
    {
      what: 'inductance of 24 AWG',
      unit: 'mH/km',
      published: 0.6173,
      computed: builtInWire('copper-24').loopMilliHPerKm,
    },
    {
      what: 'capacitance of 24 AWG',
      unit: 'nF/km',
      published: 50,
      computed: builtInWire('copper-24').nanoFPerKm,
    },
  ],
)

export const CABLE_LOSS_CHECKS = [
  ...fieldWires,
  ...fieldWireLoop,
  ...exchangeCable,
  ...at800Hz,
  ...ukCables,
  ...interfaceDocument,
  ...longLoop,
  ...loops,
]
