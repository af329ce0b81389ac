import './papers.css'
import './papers-bar.css'
import './print.css'
import './sheet.css'
import './drawing.css'
import { useComputed, useSignal } from '@preact/signals'
import { useEffect, useMemo, useRef } from 'preact/hooks'
import type { Store } from '../state/store'
import { formatCount } from '../words/units'
import { beneathOf, MapsBeneath } from './beneath'
import { cardLayer } from './lay-cards'
import { bodyOf } from './layout/paper-size'
import { SheetPage } from './layout/sheet-page'
import type { Table } from './layout/table'
import { makePapers, NOTHING_MADE } from './make-papers'
import { PaperChoices } from './paper-choices'
import type { MadePaper } from './paper-jobs'
import { usePaperWishes } from './paper-wishes'
import { OfPlan, planPicture } from './plan-picture'
import { SheetIndex } from './sheet-index'
import { showSheet, useSheetsOneWide } from './sheets-on-screen'
import { type SaveTable, TablePicker } from './table-picker'
import { useSheets } from './use-sheets'

/** More sheets than this are shown and printed only when a person says so: they come of a slip more often than of a large net. */
const MANY_SHEETS = 200

const NO_TABLES: readonly Table[] = []

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
  const page = useRef<HTMLDivElement>(null)
  const lying = useRef<HTMLElement>(null)
  useEffect(() => page.current?.focus(), [])
  const wishes = usePaperWishes(store)
  useSheetsOneWide(lying, wishes.size.value.widthMm)
  const manyAreMeant = useSignal(false)
  const making = useSignal(NOTHING_MADE)
  useEffect(() => makePapers(store, wishes, making), [])

  const { size, date, revision, chosen, bothSides, attempt } = wishes
  const { state, failure } = making.value
  const layCards = useMemo(cardLayer, [])
  const papers = layCards(
    making.value.papers.filter(({ kind }) => chosen.value.has(kind)),
    size.value,
  )
  useTitle(store.plan.value.title, papers)
  const sheets = useSheets(
    papers,
    bothSides.value,
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
  const picture = useComputed(() =>
    planPicture({
      title: store.plan.value.title,
      revision: revision.value,
      fingerprint: making.value.papers[0]?.fingerprint ?? '',
    }),
  )
  const beneath = useMemo(() => beneathOf(store), [store])
  useEffect(() => beneath.end, [beneath])
  const ofPlan = useMemo(() => ({ picture, revision }), [picture, revision])
  const isReady = state === 'ready' && sheets.areAllShown && beneath.pending.value === 0
  const waits = sheets.count > MANY_SHEETS && !manyAreMeant.value

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
        <div class="papers-choices">
          <PaperChoices store={store} wishes={wishes} made={making.value.papers} beneath={beneath} />
          <TablePicker
            tables={isReady ? papers.flatMap(({ tables }) => tables) : NO_TABLES}
            onSave={onSaveTable}
          />
        </div>
        <span class="papers-acts">
          <SheetIndex sheets={sheets.all} onChoose={(n) => showSheet(lying.current, n)} />
          <span class="papers-state" role="status" id="papers-state">
            {state === 'under way' && `Working them out … ${formatCount(sheets.count, 'sheet')}`}
            {state === 'ready' && !isReady && !waits && 'Being laid out …'}
            {(waits || isReady) && formatCount(sheets.count, 'sheet')}
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
      <section class="sheets" aria-label="Sheets" tabIndex={0} ref={lying}>
        <MapsBeneath.Provider value={beneath}>
          <OfPlan.Provider value={ofPlan}>{sheets.shown}</OfPlan.Provider>
        </MapsBeneath.Provider>
      </section>
    </div>
  )
}

/** While the papers lie open the document is called after them: a browser gives a file that name. */
function useTitle(planTitle: string, papers: readonly MadePaper[]): void {
  const titles = [...new Set(papers.map(({ title }) => title))]
  const paper =
    papers.length === 1 ? [titles[0], papers[0]!.about] : titles.length === 1 ? titles : ['Papers']
  const name = [planTitle, ...paper].filter(Boolean).join(' – ')
  useEffect(() => {
    const before = document.title
    document.title = name
    return () => {
      document.title = before
    }
  }, [name])
}
