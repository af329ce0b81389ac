import { wrapText } from '../../figure/text-width'
import { formatBearingDeg } from '../../words/units'

/** What one cell holds. Numbers stay numbers, so that a saved table can be reckoned with. */
export type Cell = string | number | null

export interface Column {
  /** With its unit. */
  readonly head: string
  /** Its share of the table's width. */
  readonly share: number
  /** How a number is shown: its decimals, none where absent, or as a bearing. */
  readonly show?: number | 'bearing'
}

/** A table as a value: the papers show it, and a file can hold it. */
export interface Table {
  readonly title: string
  readonly columns: readonly Column[]
  readonly rows: readonly (readonly Cell[])[]
  /** Rows are high enough for a hand that writes with cold fingers. */
  readonly isWrittenIn?: boolean
  /** Set a little smaller, for what has many columns. */
  readonly isDense?: boolean
}

export function showCell(cell: Cell | undefined, column: Column): string {
  if (cell === null || cell === undefined) return ''
  if (typeof cell === 'string') return cell
  return column.show === 'bearing' ? formatBearingDeg(cell) : cell.toFixed(column.show ?? 0)
}

/** Widths of the columns, mm, which together fill `widthMm`. */
export function columnWidthsMm(table: Table, widthMm: number): readonly number[] {
  const shares = table.columns.reduce((sum, column) => sum + column.share, 0)
  return table.columns.map((column) => (column.share / shares) * widthMm)
}

/** Letters in a table, pt, and its lines, mm; sheet.css holds the same figures. */
const USUAL = { pt: 9.5, lineMm: 4.3 }
const DENSE = { pt: 9, lineMm: 4.1 }
const lettersOf = ({ isDense }: Table) => (isDense ? DENSE : USUAL)
const PAD_MM = 2
const WRITTEN_ROW_MM = 8
const CAPTION_MM = 6.8
/** Left free at the right of a cell: more beside figures, so that they do not run into the words after them. */
const GAP_MM = { words: 1.7, figures: 3.1 }

/** True for a column that holds figures, which stand to the right. */
export const holdsFigures = (table: Table, column: number): boolean =>
  table.rows.some((row) => typeof row[column] === 'number')

/** Lines that the fullest cell of a row takes. */
function linesIn(table: Table, texts: readonly string[], widthMm: number, bold: boolean): number {
  const emMm = (lettersOf(table).pt * 25.4) / 72
  const widths = columnWidthsMm(table, widthMm)
  const lines = texts.map((text, i) => {
    const gapMm = holdsFigures(table, i) ? GAP_MM.figures : GAP_MM.words
    return wrapText(text, Math.max(1, (widths[i]! - gapMm) / emMm), bold).length
  })
  return Math.max(1, ...lines)
}

/** Height of one row, mm, with its longest cell broken into lines. */
export function rowHeightMm(table: Table, row: readonly Cell[], widthMm: number): number {
  const texts = table.columns.map((column, i) => showCell(row[i], column))
  const heightMm = linesIn(table, texts, widthMm, false) * lettersOf(table).lineMm + PAD_MM
  return table.isWrittenIn ? Math.max(WRITTEN_ROW_MM, heightMm) : heightMm
}

/** Height of the table's head, mm: its title, where it has one, and the names of its columns. */
export function tableHeadHeightMm(table: Table, widthMm: number): number {
  const heads = table.columns.map((column) => column.head)
  const captionMm = table.title ? CAPTION_MM : 0
  return captionMm + linesIn(table, heads, widthMm, true) * lettersOf(table).lineMm + PAD_MM
}
