import type { Cell, VoltsWhenUsed } from './cell'
import { dataSheet, derived, fromMemory, practice, read } from './sources'

const ALKALINE_COLD = [
  { tempC: -20, factor: 0.25 },
  { tempC: 0, factor: 0.65 },
  { tempC: 20, factor: 1 },
]
const ALKALINE_COLD_SOURCE = fromMemory('From memory: light drain; a heavy drain suffers more.')
const ALKALINE_END = practice('0.9 V a cell: the usable end is 0.8 to 1.0 V.')

/** One alkaline cell of 1.5 V at a light drain. */
const ALKALINE_CURVE: readonly VoltsWhenUsed[] = [
  { part: 0, volts: 1.58 },
  { part: 0.05, volts: 1.47 },
  { part: 0.1, volts: 1.42 },
  { part: 0.2, volts: 1.36 },
  { part: 0.3, volts: 1.32 },
  { part: 0.4, volts: 1.28 },
  { part: 0.5, volts: 1.25 },
  { part: 0.6, volts: 1.22 },
  { part: 0.7, volts: 1.18 },
  { part: 0.8, volts: 1.13 },
  { part: 0.9, volts: 1.05 },
  { part: 0.95, volts: 0.98 },
  { part: 1, volts: 0.8 },
]
const ALKALINE_CURVE_SOURCE = fromMemory(
  'Its ends by papers that were read: 1.58 V open when fresh (a maker’s page on cylindrical alkaline cells), 0.8 V where an LR20 has given its 18 Ah (product specification LR20, 2009). The way between from memory of makers’ curves at a light drain.',
)
const ALKALINE_CATALOGUE =
  'an alkaline catalogue, sheets for 6LR61 and LR14 and its list of cylindrical cells'
const alkaline = (cells: number) => ({
  volts: cells * 1.5,
  endVolts: cells * 0.9,
  coldFactor: ALKALINE_COLD,
  curve: ALKALINE_CURVE.map(({ part, volts }) => ({ part, volts: cells * volts })),
})
const ALKALINE_SOURCES = {
  volts: dataSheet('Nominal.'),
  endVolts: ALKALINE_END,
  coldFactor: ALKALINE_COLD_SOURCE,
  curve: ALKALINE_CURVE_SOURCE,
}

export const ALKALINE_9_VOLT: Cell = {
  id: '6lr61',
  name: '9 V alkaline, 6LR61',
  ...alkaline(6),
  ohms: 1.7,
  ampHours: 0.5,
  capacity: [
    { drainMA: 15, ampHours: 0.5 },
    { drainMA: 25, ampHours: 0.45 },
    { drainMA: 100, ampHours: 0.3 },
  ],
  kg: 0.045,
  source: 'alkaline catalogue: 1.7 Ω at 1 kHz, 45 g; about 0.5 Ah at 15 mA by published tests',
  sources: {
    ...ALKALINE_SOURCES,
    ohms: dataSheet(`1.7 Ω at 1 kHz: ${ALKALINE_CATALOGUE}.`),
    ampHours: read(
      'About 0.5 Ah at 15 mA, 0.4 to 0.6 Ah: published tests; a page of equivalents has 0.55 to 0.6.',
    ),
    capacity: fromMemory('0.5 Ah at 15 mA: published tests; the heavier drains from memory.'),
    kg: dataSheet(`45 g: ${ALKALINE_CATALOGUE}.`),
  },
}

export const ALKALINE_D: Cell = {
  id: 'lr20',
  name: 'D alkaline, LR20',
  ...alkaline(1),
  ohms: 0.15,
  ampHours: 18,
  capacity: [
    { drainMA: 25, ampHours: 18 },
    { drainMA: 250, ampHours: 11 },
    { drainMA: 500, ampHours: 8 },
    { drainMA: 1000, ampHours: 6 },
  ],
  kg: 0.139,
  source: 'product specification LR20, 2009: 18 Ah at 25 mA to 0.8 V, 139 g; the rest from memory',
  sources: {
    ...ALKALINE_SOURCES,
    ohms: fromMemory('0.1 to 0.2 Ω fresh, from memory; the smaller LR14 has 0.15 Ω at 1 kHz by its sheet.'),
    ampHours: dataSheet('18 Ah at 25 mA, continuous, 20 °C, to 0.8 V: product specification LR20, 2009.'),
    capacity: fromMemory('At 25 mA by the product specification LR20, 2009; the heavier drains from memory.'),
    kg: dataSheet('139 g: product specification LR20, 2009, 3.4.'),
  },
}

export const ALKALINE_C: Cell = {
  id: 'lr14',
  name: 'C alkaline, LR14',
  ...alkaline(1),
  ohms: 0.15,
  ampHours: 8,
  capacity: [
    { drainMA: 25, ampHours: 8 },
    { drainMA: 250, ampHours: 5 },
    { drainMA: 1000, ampHours: 2.5 },
  ],
  kg: 0.069,
  source: 'alkaline catalogue: 0.15 Ω at 1 kHz, 69 g; capacity from memory',
  sources: {
    ...ALKALINE_SOURCES,
    ohms: dataSheet(`0.15 Ω at 1 kHz: ${ALKALINE_CATALOGUE}.`),
    ampHours: fromMemory('7.5 to 8.5 Ah at a light drain, from memory.'),
    capacity: fromMemory('From memory, falling as that of the D cell does.'),
    kg: dataSheet(`69 g: ${ALKALINE_CATALOGUE}.`),
  },
}

export const ALKALINE_AA: Cell = {
  id: 'lr6',
  name: 'AA alkaline, LR6',
  ...alkaline(1),
  ohms: 0.2,
  ampHours: 2.7,
  capacity: [
    { drainMA: 25, ampHours: 2.7 },
    { drainMA: 100, ampHours: 2.15 },
    { drainMA: 500, ampHours: 1.3 },
    { drainMA: 1000, ampHours: 0.9 },
  ],
  kg: 0.0238,
  source: 'published tests at 100 mA to 1 A; 23.8 g by an alkaline catalogue; the rest from memory',
  sources: {
    ...ALKALINE_SOURCES,
    ohms: fromMemory('0.15 to 0.3 Ω, from memory.'),
    ampHours: read(
      '2.5 to 3 Ah at a light drain: published tests; a maker gives 2.9 Ah at 50 mA, some hours a day.',
    ),
    capacity: read(
      '2.13 to 2.20 Ah at 100 mA, 1.17 to 1.31 at 500, 0.83 to 0.98 at 1 A, on to 0.1 V: discharge tests by a maker of power supplies (2023); at 25 mA as rated.',
    ),
    kg: dataSheet(`23.8 g: ${ALKALINE_CATALOGUE}.`),
  },
}

export const LANTERN_6_VOLT: Cell = {
  id: '4lr25',
  name: '6 V alkaline lantern battery, 4LR25',
  ...alkaline(4),
  ohms: 0.6,
  ampHours: 12,
  capacity: [
    { drainMA: 50, ampHours: 12 },
    { drainMA: 250, ampHours: 9 },
    { drainMA: 1000, ampHours: 5 },
  ],
  kg: 0.885,
  source: 'four cells between C and D in one can; figures from memory',
  sources: {
    ...ALKALINE_SOURCES,
    ohms: derived('Four cells in series of about 0.15 Ω each, as D and C cells have.'),
    ampHours: fromMemory('11 to 13 Ah, from memory; zinc-carbon ones have about half.'),
    capacity: fromMemory('From memory.'),
    kg: fromMemory('From memory; zinc-carbon ones have 0.6 kg.'),
  },
}
