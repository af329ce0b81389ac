import { wrapText } from './text-width'

/** What one cell holds. Numbers stay numbers, so that a saved table can be reckoned with. */
export type Cell = string | number | null

export interface Column {
  /** With its unit. */
  readonly head: string
  /** Its share of the table's width. */
  readonly share: number
  /** How a number is shown: decimals, or a function of its own; whole numbers where absent. */
  readonly show?: number | ((value: number) => string)
}

/** A table as a value: the papers show it, and a file can hold it. */
export interface Table {
  readonly title: string
  readonly columns: readonly Column[]
  readonly rows: readonly (readonly Cell[])[]
}

export function showCell(cell: Cell | undefined, column: Column): string {
  if (cell === null || cell === undefined) return ''
  if (typeof cell === 'string') return cell
  return typeof column.show === 'function' ? column.show(cell) : cell.toFixed(column.show ?? 0)
}

/** Widths of the columns, mm, which together fill `widthMm`. */
export function columnWidthsMm(table: Table, widthMm: number): readonly number[] {
  const shares = table.columns.reduce((sum, column) => sum + column.share, 0)
  return table.columns.map((column) => (column.share / shares) * widthMm)
}

/** Letters in a table are 9 pt; sheet.css holds the same figures. */
const EM_MM = (9 * 25.4) / 72
const LINE_MM = 4.1
const PAD_MM = 2
/** Beside figures a little more is left, so that they do not run into the words after them. */
const GAP_MM = 2.4

const linesIn = (texts: readonly string[], widthsMm: readonly number[], bold: boolean) =>
  Math.max(
    1,
    ...texts.map((text, i) => wrapText(text, Math.max(1, (widthsMm[i]! - GAP_MM) / EM_MM), bold).length),
  )

/** Height of one row, mm, with its longest cell broken into lines. */
export function rowHeightMm(table: Table, row: readonly Cell[], widthMm: number): number {
  const texts = table.columns.map((column, i) => showCell(row[i], column))
  return linesIn(texts, columnWidthsMm(table, widthMm), false) * LINE_MM + PAD_MM
}

/** Height of the table's head, mm: its title and the names of its columns. */
export function tableHeadHeightMm(table: Table, widthMm: number): number {
  const heads = table.columns.map((column) => column.head)
  return 6 + linesIn(heads, columnWidthsMm(table, widthMm), true) * LINE_MM + PAD_MM
}
