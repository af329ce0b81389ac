import { useSignal } from '@preact/signals'
import { Fragment, type VNode } from 'preact'
import { useLayoutEffect, useRef } from 'preact/hooks'
import type { Block } from './layout/block'
import type { SheetCode } from './layout/sheet-code'
import type { MadePaper } from './paper-jobs'
import type { ListedSheet } from './sheet-index'

interface Sheet extends ListedSheet {
  readonly fingerprint: string
  readonly isBare: boolean
  /** It holds more than a page. */
  readonly isOverfull: boolean
  readonly blocks: readonly Block[]
  readonly code?: SheetCode
}

const backs = new WeakMap<MadePaper['sheets'], readonly Block[]>()

/** The empty back of a paper's last sheet, so that the next one begins on a front. */
function emptyBack(sheets: MadePaper['sheets']): readonly Block[] {
  const back = backs.get(sheets) ?? []
  backs.set(sheets, back)
  return back
}

/** What drawing some sheets may take, so that no hand waits for it, ms. */
const TASK_MS = 12
const MOST_AT_ONCE = 6

/** Sheets drawn a few a task, so that no hand waits for them; each once, for as long as it lies there. */
export function useSheets(
  papers: readonly MadePaper[],
  bothSides: boolean,
  draw: (sheet: Sheet) => VNode,
  atMost: number,
) {
  const drawn = useRef(new WeakMap<readonly Block[], VNode>())
  const allowed = useSignal(0)
  const begun = useRef({ count: 1, atMs: 0 })
  const all = papers.flatMap(({ title, about, isBare, fingerprint, sheets, overfull, code }) => {
    const sheet = (blocks: readonly Block[], i: number) => ({
      ...{ title, about, isBare, fingerprint, blocks, number: i + 1, of: sheets.length },
      isOverfull: overfull.includes(i),
      ...(code && i === 0 && { code }),
    })
    const isOdd = bothSides && sheets.length % 2 === 1
    return [...sheets, ...(isOdd ? [emptyBack(sheets)] : [])].map(sheet)
  })
  const most = allowed.value
  useLayoutEffect(() => {
    if (most > all.length) allowed.value = all.length
    if (most >= Math.min(all.length, atMost)) return undefined
    const { count, atMs } = begun.current
    const tookMs = atMs > 0 ? performance.now() - atMs : TASK_MS
    const next = setTimeout(() => {
      const more = Math.max(1, Math.min(MOST_AT_ONCE, Math.floor((count * TASK_MS) / tookMs)))
      begun.current = { count: more, atMs: performance.now() }
      allowed.value = Math.min(most + more, all.length)
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
