/** What a cell still gives at a steady drain, at 20 °C. */
interface CapacityAtDrain {
  readonly drainMA: number
  readonly ampHours: number
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
  readonly kg: number
  readonly source: string
  readonly sources: {
    readonly volts: string
    readonly endVolts: string
    readonly ohms: string
    readonly ampHours: string
    readonly capacity: string
    readonly coldFactor: string
    readonly kg: string
  }
}

const ALKALINE_COLD = [
  { tempC: -20, factor: 0.25 },
  { tempC: 0, factor: 0.65 },
  { tempC: 20, factor: 1 },
]
const ALKALINE_COLD_SOURCE = 'From memory: light drain; a heavy drain suffers more.'
const ALKALINE_END = '0.9 V a cell, from memory; the usable end is 0.8 to 1.0 V.'

export const ALKALINE_9_VOLT: Cell = {
  id: '6lr61',
  name: '9 V alkaline, 6LR61',
  volts: 9,
  endVolts: 5.4,
  ohms: 1.7,
  ampHours: 0.5,
  capacity: [
    { drainMA: 15, ampHours: 0.5 },
    { drainMA: 25, ampHours: 0.45 },
    { drainMA: 100, ampHours: 0.3 },
  ],
  coldFactor: ALKALINE_COLD,
  kg: 0.045,
  source: 'alkaline catalogue: 1.7 Ω at 1 kHz, 45 g; about 0.5 Ah at 15 mA by published tests',
  sources: {
    volts: 'Nominal.',
    endVolts: ALKALINE_END,
    ohms: '1.7 Ω at 1 kHz: alkaline catalogue.',
    ampHours: 'About 0.5 Ah at 15 mA, 0.4 to 0.6 Ah: published tests.',
    capacity: '0.5 Ah at 15 mA: published tests; the heavier drains from memory.',
    coldFactor: ALKALINE_COLD_SOURCE,
    kg: '45 g: alkaline catalogue.',
  },
}

export const ALKALINE_D: Cell = {
  id: 'lr20',
  name: 'D alkaline, LR20',
  volts: 1.5,
  endVolts: 0.9,
  ohms: 0.15,
  ampHours: 18,
  capacity: [
    { drainMA: 25, ampHours: 18 },
    { drainMA: 250, ampHours: 11 },
    { drainMA: 500, ampHours: 8 },
    { drainMA: 1000, ampHours: 6 },
  ],
  coldFactor: ALKALINE_COLD,
  kg: 0.139,
  source: 'product specification LR20, 2009: 18 Ah at 25 mA to 0.8 V, 139 g; the rest from memory',
  sources: {
    volts: 'Nominal.',
    endVolts: ALKALINE_END,
    ohms: '0.1 to 0.2 Ω fresh, from memory.',
    ampHours: '18 Ah at 25 mA, continuous, 20 °C, to 0.8 V: product specification LR20, 2009.',
    capacity: 'At 25 mA by the product specification LR20, 2009; the heavier drains from memory.',
    coldFactor: ALKALINE_COLD_SOURCE,
    kg: '139 g: product specification LR20, 2009.',
  },
}

const ALKALINE_AA: Cell = {
  id: 'lr6',
  name: 'AA alkaline, LR6',
  volts: 1.5,
  endVolts: 0.9,
  ohms: 0.2,
  ampHours: 2.7,
  capacity: [
    { drainMA: 25, ampHours: 2.7 },
    { drainMA: 250, ampHours: 2 },
    { drainMA: 1000, ampHours: 1.2 },
  ],
  coldFactor: ALKALINE_COLD,
  kg: 0.023,
  source: '2.5 to 3 Ah at a light drain by published tests; the rest from memory',
  sources: {
    volts: 'Nominal.',
    endVolts: ALKALINE_END,
    ohms: '0.15 to 0.3 Ω, from memory.',
    ampHours: '2.5 to 3 Ah at a light drain: published tests.',
    capacity: 'At a light drain by published tests; the heavier drains from memory.',
    coldFactor: ALKALINE_COLD_SOURCE,
    kg: 'From memory.',
  },
}

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
    { tempC: 0, factor: 0.8 },
    { tempC: 20, factor: 1 },
  ],
  kg: 2.4,
  source: 'rated over 20 hours; from memory',
  sources: {
    volts: 'Nominal, 2 V a cell.',
    endVolts: '1.75 V a cell: from memory.',
    ohms: 'From memory.',
    ampHours: 'Rated over 20 hours, from memory.',
    capacity: 'Over 20, 5 and 1 hours: from memory.',
    coldFactor: 'From memory.',
    kg: 'From memory.',
  },
}

/** The cells that the program knows of its own. */
export const CELLS: readonly Cell[] = [ALKALINE_9_VOLT, ALKALINE_D, ALKALINE_AA, LEAD_ACID_12_VOLT]

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
