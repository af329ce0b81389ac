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

/** Sheets drawn one a task, so that no hand waits for them; each once, for as long as it lies there. */
export function useSheets(
  papers: readonly MadePaper[],
  bothSides: boolean,
  draw: (sheet: Sheet) => VNode,
  atMost: number,
) {
  const drawn = useRef(new WeakMap<readonly Block[], VNode>())
  const allowed = useSignal(0)
  const all = papers.flatMap(({ title, about, isBare, fingerprint, sheets, code }) => {
    const own = sheets.map((blocks, i) => ({
      ...{ title, about, isBare, fingerprint, blocks, number: i + 1, of: sheets.length },
      ...(code && i === 0 && { code }),
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
