import { textWidthEm, wrapText } from '../../figure/text-width'
import { formatBearingDeg } from '../../words/units'

/** An empty box to tick with a pencil. */
export const TICK_BOX = '☐'

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
  /** Set as small as a lamp in the rain allows, for what must stand on one sheet. */
  readonly isTight?: boolean
  /** Its rows lie closer, so that as many as may be stand on one sheet. */
  readonly isClose?: boolean
  /** Its title is only for a file. */
  readonly isUntitled?: boolean
  /** Set larger, for what is read from a wall or at arm's length. */
  readonly isLarge?: boolean
  /** Of a part of a table: what the whole asks for, so that all parts have the same columns. */
  readonly leastEm?: readonly number[]
}

export function showCell(cell: Cell | undefined, column: Column): string {
  if (cell === null || cell === undefined) return ''
  if (typeof cell === 'string') return cell
  // Nothing is nothing, whichever side of it the reckoning came from.
  return column.show === 'bearing'
    ? formatBearingDeg(cell)
    : cell.toFixed(column.show ?? 0).replace(/^-(0(\.0*)?)$/, '$1')
}

/** A word longer than this is broken, em: a name of forty letters in one word must not push the other columns off the sheet. */
const LONGEST_WORD_EM = 8

const remembered = new WeakMap<Table, readonly number[]>()

/** The least width of each column's text, em: no figure and no word of usual length is broken. */
export function leastWidthsEm(table: Table): readonly number[] {
  const known = table.leastEm ?? remembered.get(table)
  if (known) return known
  const least = table.columns.map((column, i) => {
    const words = (text: string, bold: boolean) =>
      text.split(' ').map((word) => Math.min(LONGEST_WORD_EM, textWidthEm(word, bold)))
    const cells = table.rows.flatMap((row) => {
      const text = showCell(row[i], column)
      return typeof row[i] === 'number' ? [textWidthEm(text)] : words(text, false)
    })
    return [...words(column.head, true), ...cells].reduce((most, em) => Math.max(most, em), 0)
  })
  remembered.set(table, least)
  return least
}

/**
 * Widths of the columns, mm, which together fill `widthMm`: by their shares, but none narrower than its widest figure or word as long as all of
 * them find room.
 */
export function columnWidthsMm(table: Table, widthMm: number): readonly number[] {
  const known = widthsOf.get(table)
  if (known?.widthMm === widthMm) return known.widths
  const widths = reckonedWidthsMm(table, widthMm)
  widthsOf.set(table, { widthMm, widths })
  return widths
}

const widthsOf = new WeakMap<Table, { readonly widthMm: number; readonly widths: readonly number[] }>()

const emMmOf = (table: Table) => (lettersOf(table).pt * 25.4) / 72

/** What each column's text asks for at the least, with the gap after it, mm. */
const wantedWidthsMm = (table: Table, leastEm: readonly number[]) =>
  leastEm.map((em, i) => em * emMmOf(table) + gapMm(table, i) + 0.2)

/** A head of no more letters stands on one line where there is room: `Loop Ω`, `On it ft`. */
const SHORT_HEAD = 9
/** The part of a table's width that its columns may ask for, so that heads need not be broken. */
const ROOMY = 0.8

const bound = (head: string) => (head.length <= SHORT_HEAD ? head.replaceAll(' ', '\u00a0') : head)

/** The least widths with every short head on one line, em; undefined where the table has no room for that. */
function leastWithWholeHeads(table: Table, widthMm: number): readonly number[] | undefined {
  const leastEm = leastWidthsEm(table).map((em, i) => {
    const head = bound(table.columns[i]!.head)
    return head.includes('\u00a0') ? Math.max(em, textWidthEm(head, true)) : em
  })
  const sumMm = wantedWidthsMm(table, leastEm).reduce((sum, mm) => sum + mm, 0)
  return sumMm <= ROOMY * widthMm ? leastEm : undefined
}

/** The heads of a table as they are set in that width. */
export function headsOf(table: Table, widthMm: number): readonly string[] {
  const heads = table.columns.map(({ head }) => head)
  return leastWithWholeHeads(table, widthMm) ? heads.map(bound) : heads
}

function reckonedWidthsMm(table: Table, widthMm: number): readonly number[] {
  const wantedMm = wantedWidthsMm(table, leastWithWholeHeads(table, widthMm) ?? leastWidthsEm(table))
  const scale = Math.min(1, widthMm / wantedMm.reduce((sum, mm) => sum + mm, 0))
  const leastMm = wantedMm.map((mm) => mm * scale)
  const fixed = new Set<number>()
  for (;;) {
    const free = table.columns.map((_, i) => i).filter((i) => !fixed.has(i))
    const shares = free.reduce((sum, i) => sum + table.columns[i]!.share, 0)
    const roomMm = widthMm - [...fixed].reduce((sum, i) => sum + leastMm[i]!, 0)
    const widths = leastMm.map((mm, i) => (fixed.has(i) ? mm : (table.columns[i]!.share / shares) * roomMm))
    const narrow = free.filter((i) => widths[i]! < leastMm[i]! - 1e-9)
    if (narrow.length === 0) return widths
    for (const i of narrow) fixed.add(i)
  }
}

/** Letters in a table, pt, and its lines, mm; sheet.css holds the same figures. */
const USUAL = { pt: 9.5, lineMm: 4.3 }
const DENSE = { pt: 9, lineMm: 4.1 }
const TIGHT = { pt: 8, lineMm: 3.5 }
const LARGE = { pt: 11.5, lineMm: 5.2 }
const lettersOf = ({ isDense, isLarge, isTight }: Table) =>
  isTight ? TIGHT : isLarge ? LARGE : isDense ? DENSE : USUAL
const padMm = ({ isTight, isClose }: Table) => (isClose ? 0.6 : isTight ? 1.3 : 2)
const WRITTEN_ROW_MM = 8
const CAPTION_MM = 6.8
const TIGHT_CAPTION_MM = 4.6
/** Left free at the right of a cell: more beside figures, so that they do not run into the words after them. */
const GAP_MM = { words: 1.7, figures: 3.1 }

/** True for a column that holds figures, which stand to the right. */
export function holdsFigures(table: Table, column: number): boolean {
  const known =
    figuresIn.get(table) ?? table.columns.map((_, i) => table.rows.some((row) => typeof row[i] === 'number'))
  figuresIn.set(table, known)
  return known[column] ?? false
}

const figuresIn = new WeakMap<Table, readonly boolean[]>()

const gapMm = (table: Table, column: number) => (holdsFigures(table, column) ? GAP_MM.figures : GAP_MM.words)

/** Lines that the fullest cell of a row takes. */
function linesIn(table: Table, texts: readonly string[], widthMm: number, bold: boolean): number {
  const emMm = emMmOf(table)
  const widths = columnWidthsMm(table, widthMm)
  const lines = texts.map((text, i) => {
    return wrapText(text, Math.max(1, (widths[i]! - gapMm(table, i)) / emMm), bold).length
  })
  return Math.max(1, ...lines)
}

/** Height of one row, mm, with its longest cell broken into lines. */
export function rowHeightMm(table: Table, row: readonly Cell[], widthMm: number): number {
  const texts = table.columns.map((column, i) => showCell(row[i], column))
  const heightMm = linesIn(table, texts, widthMm, false) * lettersOf(table).lineMm + padMm(table)
  return table.isWrittenIn ? Math.max(WRITTEN_ROW_MM, heightMm) : heightMm
}

/** Height of the table's head, mm: its title, where it has one, and the names of its columns. */
export function tableHeadHeightMm(table: Table, widthMm: number): number {
  const heads = headsOf(table, widthMm)
  const emMm = emMmOf(table)
  // ` (continued)` stands behind the title of a later part.
  const titleLines = wrapText(`${table.title} (continued)`, widthMm / emMm, true).length
  const captionMm =
    table.title && !table.isUntitled
      ? (table.isTight ? TIGHT_CAPTION_MM : CAPTION_MM) + (titleLines - 1) * lettersOf(table).lineMm
      : 0
  return captionMm + linesIn(table, heads, widthMm, true) * lettersOf(table).lineMm + padMm(table)
}
