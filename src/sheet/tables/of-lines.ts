import type { Table } from '../layout/table'

/** The same table of several lines as one, which tells in its first column which line a row is of. */
export function withLine(tables: readonly (readonly [number: number, table: Table])[]): Table {
  const [, first] = tables[0]!
  if (tables.length === 1) return first
  return {
    ...first,
    columns: [{ head: 'Line', share: 9 }, ...first.columns],
    rows: tables.flatMap(([number, { rows }]) => rows.map((row) => [`${number}`, ...row])),
  }
}
