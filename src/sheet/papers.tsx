import './papers.css'
import './sheet.css'
import './drawing.css'
import { useSignal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import type { Store } from '../state/store'
import { breakIntoSheets } from './layout/break-sheets'
import { bodyOf, PAPER_SIZES } from './layout/paper-size'
import { SheetPage } from './layout/sheet-page'
import { PAPER_KINDS, type Paper } from './paper-kinds'
import type { PaperSource } from './paper-source'
import { type SaveTable, TablePicker } from './table-picker'

const today = () => {
  const now = new Date()
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10)
}

const tablesOf = (papers: readonly Paper[]) =>
  papers.flatMap(({ about, blocks }) =>
    blocks.flatMap((block) => {
      if (block.kind !== 'table') return []
      // What stands on the sheet of one line would else bear one name for all lines.
      return [about ? { ...block.table, title: `${about}: ${block.table.title}` } : block.table]
    }),
  )

/** The papers as they will be printed, sheet by sheet, over the whole screen; the bar above them is not printed. */
export function Papers({
  store,
  onClose,
  onSaveTable,
}: {
  store: Store
  onClose: () => void
  onSaveTable: SaveTable
}) {
  const size = useSignal(PAPER_SIZES[0]!)
  const date = useSignal(today())
  const revision = useSignal('1')
  const page = useRef<HTMLDivElement>(null)
  useEffect(() => page.current?.focus(), [])
  const chosen = useSignal<ReadonlySet<string>>(new Set(PAPER_KINDS.map(({ name }) => name)))

  const source: PaperSource = {
    plan: store.plan.value,
    report: store.report.value,
    catalog: store.catalog.value,
    ground: store.ground.value,
    system: store.units.value,
    date: date.value,
    revision: revision.value,
  }
  const room = bodyOf(size.value)
  const papers = PAPER_KINDS.filter(({ name }) => chosen.value.has(name)).flatMap((kind) =>
    kind.papers(source, room),
  )
  const choose = (name: string, wanted: boolean) => {
    const next = new Set(chosen.value)
    if (wanted) next.add(name)
    else next.delete(name)
    chosen.value = next
  }

  return (
    <div
      class="papers"
      role="dialog"
      aria-modal="true"
      aria-label="Papers"
      data-size={size.value.name}
      ref={page}
      tabIndex={-1}
      onKeyDown={(event) => event.key === 'Escape' && onClose()}
    >
      <div class="papers-bar">
        <fieldset>
          <legend>Papers</legend>
          {PAPER_KINDS.map(({ name }) => (
            <label key={name}>
              <input
                type="checkbox"
                checked={chosen.value.has(name)}
                onChange={(event) => choose(name, event.currentTarget.checked)}
              />
              {name}
            </label>
          ))}
        </fieldset>
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
        <label>
          Revision
          <input
            class="revision"
            value={revision.value}
            maxLength={12}
            onInput={(event) => {
              revision.value = event.currentTarget.value
            }}
          />
        </label>
        <TablePicker tables={tablesOf(papers)} onSave={onSaveTable} />
        <span class="papers-acts">
          <button type="button" onClick={() => window.print()} disabled={papers.length === 0}>
            Print
          </button>
          <button type="button" onClick={onClose}>
            Close
          </button>
        </span>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys */}
      <section class="sheets" aria-label="Sheets" tabIndex={0}>
        {papers.map(({ title, about, blocks }) =>
          breakIntoSheets(blocks, room).map((sheet, i, sheets) => (
            <SheetPage
              key={`${title} ${about} ${i}`}
              title={title}
              about={about}
              source={source}
              blocks={sheet}
              widthMm={room.widthMm}
              number={i + 1}
              of={sheets.length}
            />
          )),
        )}
      </section>
    </div>
  )
}
