import './papers.css'
import './sheet.css'
import './drawing.css'
import { useSignal } from '@preact/signals'
import { Fragment, type VNode } from 'preact'
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks'
import type { Store } from '../state/store'
import { formatCount } from '../words/units'
import type { Block } from './layout/block'
import { bodyOf, PAPER_SIZES } from './layout/paper-size'
import { SheetPage } from './layout/sheet-page'
import type { Table } from './layout/table'
import { makePapers, NOTHING_MADE } from './make-papers'
import type { MadePaper } from './paper-jobs'
import { PAPER_NAMES } from './paper-names'
import { type SaveTable, TablePicker } from './table-picker'

/** More sheets than this are shown and printed only when a person says so: they come of a slip more often than of a large net. */
const MANY_SHEETS = 100

const NO_TABLES: readonly Table[] = []

const today = () => {
  const now = new Date()
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10)
}

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
  const chosen = useSignal<ReadonlySet<string>>(new Set(PAPER_NAMES))
  const attempt = useSignal(0)
  const manyAreMeant = useSignal(false)
  const making = useSignal(NOTHING_MADE)
  useEffect(() => makePapers(store, { size, date, attempt }, making), [])

  const { state, failure } = making.value
  const papers = making.value.papers.filter(({ kind }) => chosen.value.has(kind))
  const sheets = useSheets(
    papers,
    (sheet) => (
      <SheetPage
        {...sheet}
        planTitle={store.plan.peek().title}
        date={date.peek()}
        revision={revision}
        doubts={store.report.peek().doubts.length}
        system={store.units.peek()}
        widthMm={bodyOf(size.peek()).widthMm}
      />
    ),
    manyAreMeant.value ? Number.POSITIVE_INFINITY : MANY_SHEETS,
  )
  const isReady = state === 'ready' && sheets.areAllShown
  const waits = sheets.count > MANY_SHEETS && !manyAreMeant.value
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
          {PAPER_NAMES.map((name) => (
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
        <TablePicker
          tables={isReady ? papers.flatMap(({ tables }) => tables) : NO_TABLES}
          onSave={onSaveTable}
        />
        <span class="papers-acts">
          <span class="papers-state" role="status" id="papers-state">
            {state === 'under way' && `Being reckoned … ${formatCount(sheets.count, 'sheet')}`}
            {state === 'ready' && !isReady && !waits && 'Being laid out …'}
            {waits && formatCount(sheets.count, 'sheet')}
          </span>
          <button
            type="button"
            onClick={() => window.print()}
            disabled={!isReady || papers.length === 0}
            aria-describedby="papers-state"
          >
            Print
          </button>
          <button type="button" onClick={onClose}>
            Close
          </button>
        </span>
      </div>
      {failure && (
        <div class="papers-failure" role="alert">
          <p>{failure}</p>
          <button
            type="button"
            onClick={() => {
              attempt.value += 1
            }}
          >
            Make them again
          </button>
        </div>
      )}
      {waits && (
        <div class="papers-failure" role="alert">
          <p>
            These papers take {sheets.count} sheets or more. Choose fewer papers above, or look whether a line
            is longer than it is meant to be.
          </p>
          <button
            type="button"
            onClick={() => {
              manyAreMeant.value = true
            }}
          >
            Show them all
          </button>
        </div>
      )}
      {!isReady && (
        <p class="papers-unready">These papers are not complete: print them again once all are made.</p>
      )}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys */}
      <section class="sheets" aria-label="Sheets" tabIndex={0}>
        {sheets.shown}
      </section>
    </div>
  )
}

interface Sheet {
  readonly title: string
  readonly about: string
  readonly blocks: readonly Block[]
  readonly number: number
  readonly of: number
}

/** Sheets drawn one a task, so that no hand waits for them; each once, for as long as it lies there. */
function useSheets(papers: readonly MadePaper[], draw: (sheet: Sheet) => VNode, atMost: number) {
  const drawn = useRef(new WeakMap<readonly Block[], VNode>())
  const allowed = useSignal(0)
  const all = papers.flatMap(({ title, about, sheets }) =>
    sheets.map((blocks, i) => ({ title, about, blocks, number: i + 1, of: sheets.length })),
  )
  const most = allowed.value
  useLayoutEffect(() => {
    if (most > all.length) allowed.value = all.length
    if (most >= Math.min(all.length, atMost)) return undefined
    const next = setTimeout(() => {
      allowed.value = most + 1
    })
    return () => clearTimeout(next)
  }, [most, all.length, atMost])
  const shown = all.slice(0, most).map((sheet) => {
    const before = drawn.current.get(sheet.blocks)
    const page = before ?? (
      <Fragment key={`${sheet.title} ${sheet.about} ${sheet.number}`}>{draw(sheet)}</Fragment>
    )
    if (!before) drawn.current.set(sheet.blocks, page)
    return page
  })
  return { shown, count: all.length, areAllShown: shown.length === all.length }
}
