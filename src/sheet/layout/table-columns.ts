import { type Block, heightOfMm } from './block'
import { type Letters, tableBlock } from './fewest-sheets'
import type { SheetRoom } from './paper-size'
import { leastWidthsEm, type Table } from './table'

/** Columns in which the rows of a long table may stand beside each other: as many as make it lowest. */
const MOST_COLUMNS = 3

/** A table in several columns, each going on where the one before it ends; again on the next sheet where one does not hold it. */
export function inColumns(table: Table, room: SheetRoom, letters: Letters): readonly Block[] {
  const blocks: Block[] = []
  const inSoMany = (count: number, from: number, to: number): Block => {
    const each = Math.ceil((to - from) / count)
    return {
      kind: 'beside',
      columns: Array.from({ length: count }, (_, i) => {
        const rows = table.rows.slice(from + i * each, Math.min(to, from + (i + 1) * each))
        return { share: 1, blocks: tableBlock({ ...table, rows, leastEm: leastWidthsEm(table) }, letters) }
      }),
    }
  }
  const heightMm = (block: Block) => heightOfMm([block], room.widthMm)
  const columnsOf = (from: number, to: number): Block =>
    Array.from({ length: MOST_COLUMNS }, (_, i) => inSoMany(i + 1, from, to)).reduce((best, each) =>
      heightMm(each) < heightMm(best) ? each : best,
    )
  for (let from = 0; from < table.rows.length; ) {
    // Of a long table as much as a sheet holds: halved again and again, for each try breaks all of its words.
    let [to, tooFar] = [from + 1, table.rows.length + 1]
    while (tooFar - to > 1) {
      const middle = tooFar === table.rows.length + 1 ? table.rows.length : Math.floor((to + tooFar) / 2)
      if (heightMm(columnsOf(from, middle)) <= room.heightMm) to = middle
      else tooFar = middle
    }
    blocks.push(columnsOf(from, to))
    from = to
  }
  return blocks
}
