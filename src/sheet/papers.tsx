import './papers.css'
import './sheet.css'
import './drawing.css'
import { useComputed, useSignal } from '@preact/signals'
import { Fragment, type RefObject, type VNode } from 'preact'
import { useEffect, useLayoutEffect, useMemo, useRef } from 'preact/hooks'
import type { Store } from '../state/store'
import { formatCount } from '../words/units'
import type { Block } from './layout/block'
import { bodyOf } from './layout/paper-size'
import { SheetPage } from './layout/sheet-page'
import type { Table } from './layout/table'
import { makePapers, NOTHING_MADE } from './make-papers'
import { PaperChoices } from './paper-choices'
import type { MadePaper } from './paper-jobs'
import { usePaperWishes } from './paper-wishes'
import { OfPlan, planPicture } from './plan-picture'
import { type ListedSheet, SheetIndex } from './sheet-index'
import { type SaveTable, TablePicker } from './table-picker'

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
  const papers = making.value.papers.filter(({ kind }) => chosen.value.has(kind))
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
  const ofPlan = useMemo(() => ({ picture, revision }), [picture, revision])
  const isReady = state === 'ready' && sheets.areAllShown
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
          <PaperChoices store={store} wishes={wishes} made={making.value.papers} />
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
        <OfPlan.Provider value={ofPlan}>{sheets.shown}</OfPlan.Provider>
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

interface Sheet extends ListedSheet {
  readonly fingerprint: string
  readonly isBare: boolean
  readonly blocks: readonly Block[]
}

const backs = new WeakMap<MadePaper['sheets'], readonly Block[]>()

/** The empty back of a paper's last sheet, so that the next one begins on a front. */
function emptyBack(sheets: MadePaper['sheets']): readonly Block[] {
  const back = backs.get(sheets) ?? []
  backs.set(sheets, back)
  return back
}

/** Sheets drawn one a task, so that no hand waits for them; each once, for as long as it lies there. */
function useSheets(
  papers: readonly MadePaper[],
  bothSides: boolean,
  draw: (sheet: Sheet) => VNode,
  atMost: number,
) {
  const drawn = useRef(new WeakMap<readonly Block[], VNode>())
  const allowed = useSignal(0)
  const all = papers.flatMap(({ title, about, isBare, fingerprint, sheets }) => {
    const own = sheets.map((blocks, i) => ({
      ...{ title, about, isBare, fingerprint, blocks, number: i + 1, of: sheets.length },
    }))
    const isOdd = bothSides && own.length % 2 === 1
    return isOdd
      ? [
          ...own,
          {
            title,
            about,
            isBare,
            fingerprint,
            blocks: emptyBack(sheets),
            number: own.length + 1,
            of: own.length,
          },
        ]
      : own
  })
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
  return { shown, all, count: all.length, areAllShown: shown.length === all.length }
}

const PX_PER_MM = 96 / 25.4

/** A sheet that is wider than the screen is shown smaller, whole in its width. */
function useSheetsOneWide(sheets: RefObject<HTMLElement | null>, widthMm: number) {
  useLayoutEffect(() => {
    const element = sheets.current
    if (!element) return undefined
    const resize = () => {
      const { paddingLeft, paddingRight } = getComputedStyle(element)
      const roomPx = element.clientWidth - Number.parseFloat(paddingLeft) - Number.parseFloat(paddingRight)
      element.style.setProperty('--sheet-zoom', Math.min(1, roomPx / (widthMm * PX_PER_MM)).toFixed(3))
    }
    const watch = new ResizeObserver(resize)
    watch.observe(element)
    resize()
    return () => watch.disconnect()
  }, [widthMm])
}

/** Brings a sheet to the top, and the keyboard to what scrolls. */
function showSheet(sheets: HTMLElement | null, n: number) {
  sheets?.querySelectorAll('.sheet')[n]?.scrollIntoView({ block: 'start' })
  sheets?.focus({ preventScroll: true })
}
