import { useSignal } from '@preact/signals'
import type { Table } from './layout/table'

/** What a table is kept under when it is saved. */
export type SaveTable = (name: string, table: Table) => void

/** Lets the person pick one of the tables on the papers and save it. Tables that are only forms to write in are left out. */
export function TablePicker({ tables, onSave }: { tables: readonly Table[]; onSave: SaveTable }) {
  const picked = useSignal(0)
  const filled = tables.filter(({ isWrittenIn }) => !isWrittenIn)
  const table = filled[Math.min(picked.value, filled.length - 1)]
  return (
    <span class="table-picker">
      <label>
        Save tables
        <select
          value={picked.value}
          onChange={(event) => {
            picked.value = Number(event.currentTarget.value)
          }}
        >
          {filled.map(({ title }, i) => (
            <option key={i} value={i}>
              {title}
            </option>
          ))}
        </select>
      </label>
      <button type="button" disabled={!table} onClick={() => table && onSave(table.title, table)}>
        Save CSV
      </button>
    </span>
  )
}
