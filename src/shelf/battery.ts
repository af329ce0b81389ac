import { inSeries } from '../catalog/cell'
import { CELLS } from '../catalog/cells'
import type { Supply } from '../catalog/supply'
import { isolated } from '../isolated'

/** A battery gets no higher than this, V: above, bare ends shock, and no set needs it. Allowance, after the 48 V of telephone plant. */
const MOST_VOLTS = 60
/** Nor is it made of more cells than somebody would tape together. Allowance. */
const MOST_CELLS = 16

/**
 * Every battery that can be made of so many of one cell, to stand in one leg of a set: one cell, two in series, and so on.
 *
 * @param isTaken whether something has that id already
 */
export function batteriesOf(
  id: string,
  count: number,
  isTaken: (id: string) => boolean,
): readonly { readonly supply: Supply; readonly cells: number }[] {
  const cell = CELLS.find((each) => each.id === id)
  if (!cell) return []
  const most = Math.min(count, MOST_CELLS, Math.floor(MOST_VOLTS / cell.volts))
  return Array.from({ length: most }, (_, k) => {
    const cells = k + 1
    let free = `battery-${cells}-${id}`
    while (isTaken(free)) free += '-'
    const supply: Supply = {
      id: free,
      name: `${cells} × ${isolated(cell.name)}${cells > 1 ? ' in series' : ''}`,
      kind: 'series',
      ...inSeries(cell, cells),
      kg: cells * cell.kg,
      source: `derived: ${cells} × ${cell.name}: ${cell.source}`,
    }
    return { supply, cells }
  })
}
