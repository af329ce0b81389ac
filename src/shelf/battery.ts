import { type Cell, inSeries, partUsedAt } from '../catalog/cell'
import type { Supply } from '../catalog/supply'
import { isolated } from '../isolated'

/** A battery gets no higher than this, V: above, bare ends shock, and no set needs it. Allowance, after the 48 V of telephone plant. */
const MOST_VOLTS = 60
/** Nor is it made of more cells than somebody would tape together. Allowance. */
const MOST_CELLS = 16

/** So many of one cell, and the volts that a meter read of each; absent: fresh ones. */
interface Cells {
  readonly count: number
  readonly volts?: number | undefined
}

/**
 * Every battery that can be made of so many of one cell, to stand in one leg of a set: one cell, two in series, and so on. Cells of which
 * the volts were read have as much left as their curve says.
 *
 * @param isTaken whether something has that id already
 */
export function batteriesOf(
  fresh: Cell,
  { count, volts }: Cells,
  isTaken: (id: string) => boolean,
): readonly { readonly supply: Supply; readonly cells: number }[] {
  const cell = volts === undefined ? fresh : usedCell(fresh, volts)
  const most = Math.min(count, MOST_CELLS, Math.floor(MOST_VOLTS / cell.volts))
  return Array.from({ length: most }, (_, k) => {
    const cells = k + 1
    let free = `battery-${cells}-${cell.id}${volts === undefined ? '' : `-${volts}`}`
    while (isTaken(free)) free += '-'
    const read = volts === undefined ? '' : ` that read ${volts} V`
    const supply: Supply = {
      id: free,
      name: `${cells} × ${isolated(cell.name)}${read}${cells > 1 ? ' in series' : ''}`,
      kind: 'series',
      ...inSeries(cell, cells),
      kg: cells * cell.kg,
      source: `derived: ${cells} × ${cell.name}${read}: ${cell.source}`,
    }
    return { supply, cells }
  })
}

/** A cell at the volts that were read: what it gave before is gone from its capacity. */
function usedCell(cell: Cell, volts: number): Cell {
  const left = Math.max(0.01, 1 - partUsedAt(cell, volts))
  return { ...cell, volts, endVolts: Math.min(cell.endVolts, volts), ampHours: cell.ampHours * left }
}
