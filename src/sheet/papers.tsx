import './sheet.css'
import { useSignal } from '@preact/signals'
import type { Store } from '../state/store'
import { breakIntoSheets } from './layout/break-sheets'
import { bodyOf, PAPER_SIZES } from './layout/paper-size'
import { SheetPage } from './layout/sheet-page'
import { routeSheet } from './route-sheet'

const today = () => {
  const now = new Date()
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10)
}

/** The papers as they will be printed, sheet by sheet, over the whole screen; the bar above them is not printed. */
export function Papers({ store, onClose }: { store: Store; onClose: () => void }) {
  const size = useSignal(PAPER_SIZES[0]!)
  const date = useSignal(today())
  const system = store.units.value
  const source = {
    plan: store.plan.value,
    report: store.report.value,
    catalog: store.catalog.value,
    system,
  }
  const room = bodyOf(size.value)
  const sheets = breakIntoSheets(routeSheet(source, room), room)
  const head = {
    paper: 'Route sheet',
    plan: source.plan.title,
    date: date.value,
    basis: [
      'Datum WGS 84, true north up',
      `bearings true, lengths in ${system === 'us' ? 'feet and miles' : 'metres and kilometres'}`,
    ],
  }

  return (
    <div class="papers" role="dialog" aria-label="Papers" data-size={size.value.name}>
      <div class="papers-bar">
        <strong>Papers</strong>
        <label>
          Sheet size
          <select
            value={size.value.name}
            onChange={(event) => {
              size.value = PAPER_SIZES.find(({ name }) => name === event.currentTarget.value) ?? size.value
            }}
          >
            {PAPER_SIZES.map(({ name }) => (
              <option key={name}>{name}</option>
            ))}
          </select>
        </label>
        <label>
          Date
          <input
            type="date"
            value={date.value}
            onChange={(event) => {
              date.value = event.currentTarget.value
            }}
          />
        </label>
        <button type="button" onClick={() => window.print()}>
          Print
        </button>
        <button type="button" onClick={onClose}>
          Close
        </button>
      </div>
      <div class="desk">
        {sheets.map((blocks, i) => (
          <SheetPage
            key={i}
            head={head}
            blocks={blocks}
            size={size.value}
            number={i + 1}
            of={sheets.length}
          />
        ))}
      </div>
    </div>
  )
}
