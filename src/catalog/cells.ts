import {
  allowance,
  dataSheet,
  derived,
  derivedOnMemory,
  fromMemory,
  practice,
  read,
  type Source,
} from './sources'

/** What a cell still gives at a steady drain, at 20 °C. */
interface CapacityAtDrain {
  readonly drainMA: number
  readonly ampHours: number
}

/** Volts of the cell or battery when a part of what it gives has been used, at a drain so small that its resistance hardly counts. */
interface VoltsWhenUsed {
  readonly part: number
  readonly volts: number
}

/** A cell or battery as it is bought. */
export interface Cell {
  readonly id: string
  readonly name: string
  /** Nominal open-circuit volts. */
  readonly volts: number
  /** Volts at which it is taken to be spent. */
  readonly endVolts: number
  /** Internal resistance when fresh, Ω. */
  readonly ohms: number
  /** Rated capacity at a light drain, Ah. */
  readonly ampHours: number
  /** Capacity against drain, from the lightest drain to the heaviest. */
  readonly capacity: readonly CapacityAtDrain[]
  /** Share of the capacity at 20 °C that is left in the cold, from cold to warm. */
  readonly coldFactor: readonly { readonly tempC: number; readonly factor: number }[]
  /** How its volts fall, from fresh (0) to used up (1). */
  readonly curve: readonly VoltsWhenUsed[]
  readonly kg: number
  readonly source: string
  readonly sources: Readonly<
    Record<'volts' | 'endVolts' | 'ohms' | 'ampHours' | 'capacity' | 'coldFactor' | 'curve' | 'kg', Source>
  >
}

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

const ALKALINE_C: Cell = {
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

const ALKALINE_AA: Cell = {
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

const LEAD_ACID_SHEETS = 'data sheets of sealed lead-acid batteries of 5 and 40 Ah'

export const LEAD_ACID_12_VOLT: Cell = {
  id: 'lead-acid-12',
  name: '12 V sealed lead-acid, 7 Ah',
  volts: 12,
  endVolts: 10.5,
  ohms: 0.03,
  ampHours: 7,
  capacity: [
    { drainMA: 350, ampHours: 7 },
    { drainMA: 1200, ampHours: 6 },
    { drainMA: 4200, ampHours: 4.2 },
  ],
  coldFactor: [
    { tempC: -20, factor: 0.5 },
    { tempC: -10, factor: 0.74 },
    { tempC: 10, factor: 0.9 },
    { tempC: 20, factor: 1 },
  ],
  curve: [
    { part: 0, volts: 12.7 },
    { part: 0.1, volts: 12.6 },
    { part: 0.2, volts: 12.5 },
    { part: 0.3, volts: 12.3 },
    { part: 0.4, volts: 12.2 },
    { part: 0.5, volts: 12.1 },
    { part: 0.6, volts: 12 },
    { part: 0.7, volts: 11.8 },
    { part: 0.8, volts: 11.7 },
    { part: 0.9, volts: 11.6 },
    { part: 1, volts: 10.5 },
  ],
  kg: 2.4,
  source: `rated over 20 hours; ${LEAD_ACID_SHEETS}`,
  sources: {
    volts: dataSheet('Nominal, 2 V a cell.'),
    endVolts: dataSheet(`1.75 V a cell over 20 and 10 hours: ${LEAD_ACID_SHEETS}.`),
    ohms: dataSheet(
      '27 mΩ when charged, a sealed battery of 5 Ah: its data sheet; old ones have several times that.',
    ),
    ampHours: dataSheet('By its name, over 20 hours.'),
    capacity: dataSheet(`0.85 of the rating over 5 hours and 0.6 over 1 hour: ${LEAD_ACID_SHEETS}.`),
    coldFactor: derivedOnMemory(
      '90 % at 10 °C and 74 % at −10 °C: data sheet of a sealed battery of 40 Ah; −20 °C from memory.',
    ),
    curve: read(
      'Volts at rest against charge, 12.7 to 11.6 V, of an absorbed-glass-mat battery: a travellers’ page on 12 V batteries; its end by the data sheets.',
    ),
    kg: fromMemory('2.0 to 2.65 kg: a seller has 2.0 kg; the rest from memory.'),
  },
}

const LITHIUM_ION: Cell = {
  id: 'li-ion-18650',
  name: 'Lithium-ion cell, 18650, 2.6 Ah',
  volts: 3.7,
  endVolts: 3,
  ohms: 0.09,
  ampHours: 2.6,
  capacity: [
    { drainMA: 520, ampHours: 2.6 },
    { drainMA: 2600, ampHours: 2.4 },
  ],
  coldFactor: [
    { tempC: -10, factor: 0.6 },
    { tempC: 0, factor: 0.8 },
    { tempC: 20, factor: 1 },
  ],
  curve: [
    { part: 0, volts: 4.18 },
    { part: 0.1, volts: 4.06 },
    { part: 0.2, volts: 3.97 },
    { part: 0.3, volts: 3.88 },
    { part: 0.4, volts: 3.81 },
    { part: 0.5, volts: 3.74 },
    { part: 0.6, volts: 3.69 },
    { part: 0.7, volts: 3.65 },
    { part: 0.8, volts: 3.59 },
    { part: 0.9, volts: 3.48 },
    { part: 1, volts: 2.75 },
  ],
  kg: 0.047,
  source: 'product specification of a cell 18650 of 2.6 Ah; the way of its volts from memory',
  sources: {
    volts: dataSheet('3.7 V: product specification of a cell of 2.6 Ah, 3.4.'),
    endVolts: read('3.0 V: another maker’s standard discharge; the cell itself goes to 2.75 V.'),
    ohms: dataSheet('At most 90 mΩ at 1 kHz: another maker’s sheet of a cell of 2.6 Ah.'),
    ampHours: dataSheet('2.6 Ah over 5 hours to 2.75 V: product specification of a cell of 2.6 Ah, 3.1.'),
    capacity: fromMemory('Over 5 hours by the specification; over 1 hour from memory.'),
    coldFactor: allowance('Allowance: it may be discharged down to −10 °C.'),
    curve: fromMemory(
      'Charged to 4.2 V and spent at 2.75 V by the specification; the way between from memory.',
    ),
    kg: dataSheet('47 g at most: product specification of a cell of 2.6 Ah, 3.11.'),
  },
}

/** The cells that the program knows of its own. */
export const CELLS: readonly Cell[] = [
  ALKALINE_9_VOLT,
  ALKALINE_D,
  ALKALINE_C,
  ALKALINE_AA,
  LANTERN_6_VOLT,
  LEAD_ACID_12_VOLT,
  LITHIUM_ION,
]

/** So many cells in series: volts and internal resistance add, capacity stays. */
export const inSeries = (
  cell: Cell,
  count: number,
): {
  readonly cell: string
  readonly volts: number
  readonly endVolts: number
  readonly ohms: number
  readonly ampHours: number
} => ({
  cell: cell.id,
  volts: count * cell.volts,
  endVolts: count * cell.endVolts,
  ohms: count * cell.ohms,
  ampHours: cell.ampHours,
})

/** Between two neighbours of a rising table, in proportion; at and beyond its ends, the end's own value. */
function between(table: readonly (readonly [number, number])[], at: number): number {
  const upper = table.findIndex(([x]) => x >= at)
  if (upper <= 0) return (upper === 0 ? table[0]! : table[table.length - 1]!)[1]
  const [x0, y0] = table[upper - 1]!
  const [x1, y1] = table[upper]!
  return y0 + ((y1 - y0) * (at - x0)) / (x1 - x0)
}

/**
 * What a cell gives at a drain and a temperature, Ah.
 *
 * Between the published drains the capacity goes with the logarithm of the drain; lighter drains than the lightest get no
 * more. Source: the cell's own `sources`. Range: to about twice the heaviest drain of the table.
 */
export function ampHoursAt(cell: Cell, drainMA: number, tempC: number): number {
  const byLogDrain = cell.capacity.map((row) => [Math.log(row.drainMA), row.ampHours] as const)
  const byTemp = cell.coldFactor.map((row) => [row.tempC, row.factor] as const)
  return between(byLogDrain, Math.log(drainMA)) * between(byTemp, tempC)
}

/**
 * Volts of a cell or battery at rest when a part of what it gives has been used: 0 is fresh, 1 is used up.
 *
 * In proportion between the points of its curve; at both ends the end's own value. Source: the cell's own `sources`.
 */
export const voltsWhenUsed = (cell: Cell, part: number): number =>
  between(
    cell.curve.map((point) => [point.part, point.volts] as const),
    part,
  )

/** The part of a cell's capacity that has been used when its volts at rest have fallen so far: the other way round of `voltsWhenUsed`. */
export const partUsedAt = (cell: Cell, volts: number): number =>
  between(cell.curve.map((point) => [point.volts, point.part] as const).toReversed(), volts)
