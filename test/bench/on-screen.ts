import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import type { Page } from 'playwright-core'
import { formatPlan } from '../../src/files/format-plan'
import { parsePlan } from '../../src/files/parse-plan'
import { reportPlan } from '../../src/report/report-plan'
import { bigPlan, SIZES } from './big-plan'
import { freshPage, heapBytes, openOnPage, servedSite, threadWork } from './browser-page'
import { type BenchRow, median } from './timing'
import { traceDrag, traceIdle } from './trace-drag'

/** A frame at 60 Hz, and what its clock may be late, ms. */
const FRAME_MS = 1000 / 60
const LATE_MS = 1.5
const MOST_FIRST_SCREEN_KB = 130
const OPEN_GOAL_MS = 1000
/** Elements that the map may hold for a thousand stations far zoomed out: a browser walks each of them when it paints. */
const MOST_ELEMENTS = 6000
const MOST_GROWTH_MB = 1
const PAPERS_GOAL_MS = 3000
const TASK_GOAL_MS = 50
const WORDS_A_SHEET = 120

const partOver = (values: readonly number[], most: number): number =>
  values.filter((value) => value > most).length / values.length
const percent = (part: number): string => `${(part * 100).toFixed(1)} %`

/** A station dragged by 120 moves, the whole net in view. */
export const drags = ([0, 200, 1000] as const).map((size) => async (): Promise<BenchRow> => {
  const page = await freshPage()
  if (size) await openOnPage(page, formatPlan(bigPlan(SIZES[size])))
  await page.waitForTimeout(1500)
  const elements = await page.evaluate(() => document.querySelectorAll('.map-drawing *').length)
  const idle = await traceIdle(page)
  const { framesMs, workMs, allWorkMs } = await traceDrag(page)
  await page.context().close()
  const late = (frames: readonly number[]) => partOver(frames, FRAME_MS + LATE_MS)
  const over = partOver(workMs, FRAME_MS)
  const most = size ? 0.01 : 0
  return {
    what: `A station dragged in ${size ? `a plan of ${size} stations` : 'the demo'}: the page’s own work for one move`,
    ms: workMs.reduce((sum, ms) => sum + ms, 0) / workMs.length,
    figures: [
      `the most ${Math.max(...workMs).toFixed(1)} ms, over 16.7 ms at ${percent(over)} of ${workMs.length} moves`,
      `all threads together ${allWorkMs.toFixed(1)} ms a move (idle ${idle.allWorkMs.toFixed(1)})`,
      `${percent(late(framesMs))} of frames late by the clock (idle ${percent(late(idle.framesMs))}), the longest ${Math.max(...framesMs).toFixed(0)} ms`,
      `${elements} elements on the map`,
    ].join('; '),
    goals: [
      {
        kind: 'time',
        text: size ? 'work over 16.7 ms at under 1 % of moves' : 'no move with work over 16.7 ms',
        met: size ? over < most : over === 0,
      },
      { kind: 'count', text: `at most ${MOST_ELEMENTS} elements`, met: elements <= MOST_ELEMENTS },
    ],
  }
})

/** A file of 1,000 stations and 18,000 bends, read, judged and drawn. */
export async function openThousand(): Promise<BenchRow> {
  const text = formatPlan(bigPlan(SIZES[1000]))
  const start = performance.now()
  const plan = parsePlan(text)
  if (plan.ok) reportPlan(plan.value)
  const aloneMs = performance.now() - start
  const times: number[] = []
  const works: number[] = []
  for (let k = 0; k < 3; k++) {
    const page = await freshPage()
    const workMs = await threadWork(page)
    times.push(await openOnPage(page, text))
    works.push(await workMs())
    await page.context().close()
  }
  const ms = median(works)
  return {
    what: 'A file of 1,000 stations and 18,000 bends read, judged and drawn: the page’s own work',
    ms,
    figures: `${median(times).toFixed(0)} ms by the clock, the quickest ${Math.min(...times).toFixed(0)} ms; reading and judging it once alone ${aloneMs.toFixed(0)} ms`,
    goals: [{ kind: 'time', text: `≤ ${OPEN_GOAL_MS} ms`, met: ms <= OPEN_GOAL_MS }],
  }
}

/** What a first visit loads, and when it shows figures. */
export async function firstScreen(): Promise<BenchRow> {
  const { folder, url, browser } = await servedSite()
  const html = readFileSync(join(folder, 'index.html'), 'utf8')
  const scripts = [...html.matchAll(/(?:src|href)="\.\/(assets\/[^"]+\.js)"/g)].map((match) => match[1]!)
  const bytes = scripts.map((name) => gzipSync(readFileSync(join(folder, name))).length)
  const kb = bytes.reduce((sum, each) => sum + each, 0) / 1024
  const times: number[] = []
  for (let k = 0; k < 5; k++) {
    const page = await (await browser.newContext({ viewport: { width: 1440, height: 900 } })).newPage()
    await page.goto(url, { waitUntil: 'commit' })
    await page.waitForSelector('.circuits button')
    times.push(await page.evaluate(() => performance.now()))
    await page.context().close()
  }
  return {
    what: 'A first visit, to the first figures',
    ms: median(times),
    figures: `${kb.toFixed(1)} KB of gzipped script`,
    goals: [
      {
        kind: 'count',
        text: `at most ${MOST_FIRST_SCREEN_KB} KB of script`,
        met: kb <= MOST_FIRST_SCREEN_KB,
      },
    ],
  }
}

const growthRow = (what: string, bytes: number, perWhat: string, count: number): BenchRow => ({
  what,
  figures: `the heap has grown by ${(bytes / 2 ** 20).toFixed(2)} MB, ${(bytes / count / 1024).toFixed(1)} KB ${perWhat}`,
  goals: [{ kind: 'growth', text: `at most ${MOST_GROWTH_MB} MB`, met: bytes <= MOST_GROWTH_MB * 2 ** 20 }],
})

/** Station moved by a key and put back by undo, 2,000 times; the first 200 fill what is kept of a plan's past. */
export async function heapAfterEdits(): Promise<BenchRow> {
  const page = await freshPage()
  await page.locator('.map-canvas').focus()
  await page.keyboard.press('Tab')
  const editAndUndo = (times: number) =>
    page.evaluate(async (times) => {
      const map = document.querySelector('.map-canvas')!
      const key = (type: string, key: string, more: KeyboardEventInit = {}) =>
        map.dispatchEvent(new KeyboardEvent(type, { key, bubbles: true, cancelable: true, ...more }))
      for (let k = 0; k < times; k++) {
        key('keydown', 'ArrowRight', { altKey: true })
        key('keyup', 'Alt')
        key('keydown', 'z', { ctrlKey: true })
        if (k % 20 === 0) await new Promise((done) => setTimeout(done))
      }
    }, times)
  await editAndUndo(200)
  const before = await heapBytes(page)
  await editAndUndo(2000)
  const after = await heapBytes(page)
  await page.context().close()
  return growthRow('2,000 edits and their undos', after - before, 'an edit', 2000)
}

/** Fifty plans opened, each in the place of the one before. */
export async function heapAfterPlans(): Promise<BenchRow> {
  const page = await freshPage()
  const plan = bigPlan(SIZES[200])
  const openPlans = async (times: number, name: string) => {
    for (let k = 0; k < times; k++) await openOnPage(page, formatPlan({ ...plan, title: `${name} ${k}` }))
    await page.waitForTimeout(1500)
  }
  await openPlans(10, 'First')
  const before = await heapBytes(page)
  await openPlans(50, 'Then')
  const after = await heapBytes(page)
  await page.context().close()
  return growthRow('50 plans of 200 stations opened and closed', after - before, 'a plan', 50)
}

/** The papers of sixty stations, from the button to the PDF. */
export async function papersOfSixty(): Promise<BenchRow> {
  const page = await freshPage()
  await openOnPage(page, formatPlan(bigPlan({ stations: 60, perCircuit: 6, bends: 2 })))
  await page.waitForTimeout(1500)
  await page.evaluate(() => {
    const longest = { ms: 0 }
    Object.assign(window, { longest })
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) longest.ms = Math.max(longest.ms, duration)
    }).observe({ type: 'longtask' })
  })
  const workMs = await threadWork(page)
  const start = performance.now()
  await page.getByRole('button', { name: 'Papers', exact: true }).click()
  await page.locator('.papers .sheet').first().waitFor()
  await page.locator('.papers-unready').waitFor({ state: 'detached' })
  const madeMs = performance.now() - start
  const madeWorkMs = await workMs()
  const taskMs = await page.evaluate(() => (window as unknown as { longest: { ms: number } }).longest.ms)
  const sheets = await page.locator('.papers .sheet').count()
  await page.pdf({ preferCSSPageSize: true })
  const ms = performance.now() - start
  const printedWorkMs = await workMs()
  const plainMs = await printPlain(page, sheets)
  await page.context().close()
  return {
    what: 'Papers of 60 stations, to PDF',
    ms,
    figures: [
      `${sheets} sheets made in ${madeMs.toFixed(0)} ms by the clock, ${madeWorkMs.toFixed(0)} ms of the page’s own work; the longest task meanwhile ${taskMs ? taskMs.toFixed(0) : 'under 50'} ms`,
      `printed in ${(ms - madeMs).toFixed(0)} ms, ${(printedWorkMs - madeWorkMs).toFixed(0)} ms of work; as many sheets of bare words in ${plainMs.toFixed(0)} ms`,
    ].join('; '),
    goals: [
      { kind: 'time', text: `≤ ${PAPERS_GOAL_MS / 1000} s`, met: ms <= PAPERS_GOAL_MS },
      { kind: 'time', text: `no task over ${TASK_GOAL_MS} ms`, met: taskMs <= TASK_GOAL_MS },
    ],
  }
}

/** As many words on as many sheets, and no drawing: what Chromium itself takes to print, ms. */
async function printPlain(page: Page, sheets: number): Promise<number> {
  const words = Array.from({ length: WORDS_A_SHEET }, (_, k) => `<span>word ${k}</span> `).join('')
  await page.setContent(
    `<style>div{break-after:page;height:250mm;overflow:hidden;font:11px sans-serif}</style>${`<div>${words}</div>`.repeat(sheets)}`,
  )
  const start = performance.now()
  await page.pdf({ preferCSSPageSize: true })
  return performance.now() - start
}
