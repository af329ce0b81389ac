import type { Block } from './block'
import { breakIntoSheets } from './break-sheets'
import type { SheetRoom } from './paper-size'
import type { Table } from './table'

/** How large a table is set. */
export type Letters = Pick<Table, 'isLarge' | 'isTight' | 'isClose'>

export const LARGE: Letters = { isLarge: true }
export const USUAL: Letters = {}
export const TIGHT: Letters = { isTight: true }
export const CLOSE: Letters = { isTight: true, isClose: true }

/** The blocks in the largest letters with which they take no more sheets than with any smaller ones. @param sizes the largest first */
export function inFewestSheets(
  blocksIn: (letters: Letters) => readonly Block[],
  sizes: readonly Letters[],
  room: SheetRoom,
): readonly Block[] {
  const ways = sizes.map((letters) => {
    const blocks = blocksIn(letters)
    return { blocks, sheets: breakIntoSheets(blocks, room).length }
  })
  return ways.reduce((best, way) => (way.sheets < best.sheets ? way : best)).blocks
}

/** A table as a block, or nothing where it has no rows. */
export const tableBlock = (table: Table, letters: Letters): readonly Block[] =>
  table.rows.length > 0 ? [{ kind: 'table', table: { ...table, ...letters } }] : []
