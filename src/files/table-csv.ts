/** A table as a file holds it: heads, and rows of words and numbers. */
export interface CsvTable {
  readonly columns: readonly { readonly head: string }[]
  readonly rows: readonly (readonly (string | number | null)[])[]
}

/** Finer than any tape or meter reads: more figures would only be noise. */
const DECIMALS = 3

/** What a spreadsheet would take for a formula. Words that are a number are none. */
const isFormula = (text: string) => /^[=+\-@\t\r]/.test(text) && !/^[+-]?\d+(\.\d+)?$/.test(text)

function fieldOf(cell: string | number | null): string {
  if (cell === null) return ''
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(Number(cell.toFixed(DECIMALS))) : ''
  const text = isFormula(cell) ? `'${cell}` : cell
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}

/**
 * A table as comma-separated values: first the heads, every record ended by CR LF.
 *
 * Source: RFC 4180 (2005), section 2. Words that begin like a formula get an apostrophe before them, so that a spreadsheet shows
 * them and runs nothing: OWASP, CSV Injection.
 */
export const formatTableCsv = ({ columns, rows }: CsvTable): string =>
  [columns.map(({ head }) => head), ...rows].map((row) => `${row.map(fieldOf).join(',')}\r\n`).join('')
