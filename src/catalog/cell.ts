import type { Source } from './sources'

/** What a cell still gives at a steady drain, at 20 °C. */
interface CapacityAtDrain {
  readonly drainMA: number
  readonly ampHours: number
}

/** Volts of the cell or battery when a part of what it gives has been used, at a drain so small that its resistance hardly counts. */
export interface VoltsWhenUsed {
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
