import type { Page } from 'playwright-core'
import { servedSite } from './browser-page'

/** What a drag came to, by Chromium's own trace. */
interface Drag {
  /** Time from one frame on the screen to the next, ms. */
  readonly framesMs: readonly number[]
  /** What a processor works on the page's own thread from one frame's start to the next, ms: script, style, layout, paint, layers. */
  readonly workMs: readonly number[]
  /** The work of all of Chromium's threads for one move, raster and compositor too, ms. */
  readonly allWorkMs: number
}

const MOVES = 120
const WARM_MOVES = 120

interface TraceEvent {
  readonly name: string
  readonly ph: string
  readonly ts: number
  readonly dur?: number
  readonly tdur?: number
  readonly pid: number
  readonly tid: number
}

/** Drags a station in a circle, one move a frame, while Chromium writes down what it does. */
export async function traceDrag(page: Page): Promise<Drag> {
  const from = await middleStation(page)
  // A first drag, let go: what is drawn once, and what is compiled once, is done.
  await drag(page, from, WARM_MOVES)
  await page.waitForTimeout(800)
  return traced(page, () => drag(page, from, MOVES))
}

/** The same page with nothing in hand but a dot of four pixels: what this machine leaves a page at this hour. */
export const traceIdle = (page: Page): Promise<Drag> => traced(page, () => moveDot(page, MOVES))

async function traced(page: Page, work: () => Promise<void>): Promise<Drag> {
  const { browser } = await servedSite()
  await browser.startTracing(page, {
    categories: [
      'disabled-by-default-devtools.timeline',
      'devtools.timeline',
      'disabled-by-default-devtools.timeline.frame',
      'blink.user_timing',
      'toplevel',
    ],
  })
  await work()
  const trace = JSON.parse((await browser.stopTracing()).toString()) as { traceEvents: readonly TraceEvent[] }
  return readTrace(trace.traceEvents)
}

/** Where the station nearest to the middle of the map stands; where all are gathered one is selected, and so stands alone. */
async function middleStation(page: Page): Promise<{ x: number; y: number }> {
  if ((await page.locator('.station .block').count()) === 0) {
    await page.locator('.map-canvas').focus()
    await page.keyboard.press('Tab')
  }
  return page.evaluate(() => {
    const map = document.querySelector('#map')!.getBoundingClientRect()
    const far = ({ x, y }: { x: number; y: number }) =>
      Math.hypot(x - map.x - map.width / 2, y - map.y - map.height / 2)
    return [...document.querySelectorAll('.station .block')]
      .map((block) => block.getBoundingClientRect())
      .map(({ x, y, width, height }) => ({ x: x + width / 2, y: y + height / 2 }))
      .sort((a, b) => far(a) - far(b))[0]!
  })
}

/** One move a frame, round a circle; let go at the end, as if nothing had been. */
const drag = (page: Page, from: { x: number; y: number }, moves: number): Promise<void> =>
  page.evaluate(
    async ({ from, moves }) => {
      const tell = (type: string, to: EventTarget, x: number, y: number) =>
        to.dispatchEvent(
          new PointerEvent(type, {
            pointerId: 1,
            isPrimary: true,
            pointerType: 'mouse',
            button: type === 'pointermove' ? -1 : 0,
            buttons: 1,
            clientX: x,
            clientY: y,
            bubbles: true,
            cancelable: true,
          }),
        )
      tell('pointerdown', document.querySelector('.map-canvas')!, from.x, from.y)
      performance.mark('drag-begins')
      for (let k = 0; k < moves; k++) {
        await new Promise((done) => requestAnimationFrame(done))
        const angle = (k / 30) * 2 * Math.PI
        tell('pointermove', window, from.x + 24 * Math.sin(angle) + 6, from.y + 24 * Math.cos(angle) - 24)
      }
      performance.mark('drag-ends')
      tell('pointercancel', window, from.x, from.y)
    },
    { from, moves },
  )

const moveDot = (page: Page, moves: number): Promise<void> =>
  page.evaluate(async (moves) => {
    const dot = document.createElement('div')
    dot.style.cssText = 'position:fixed;left:0;top:0;width:4px;height:4px;background:red;z-index:9999'
    document.body.append(dot)
    performance.mark('drag-begins')
    for (let k = 0; k < moves; k++) {
      await new Promise((done) => requestAnimationFrame(done))
      dot.style.left = `${k % 20}px`
    }
    performance.mark('drag-ends')
    dot.remove()
  }, moves)

function readTrace(events: readonly TraceEvent[]): Drag {
  const mark = (name: string) => events.find((event) => event.name === name)!
  const [begins, ends] = [mark('drag-begins'), mark('drag-ends')]
  const within = events.filter(({ ts }) => ts >= begins.ts && ts <= ends.ts)
  const ofPage = within.filter(({ pid }) => pid === begins.pid)
  const shown = ofPage.filter(({ name }) => name === 'DrawFrame').map(({ ts }) => ts / 1000)
  const tasks = outermost(within)
  const own = tasks.filter(({ pid, tid }) => pid === begins.pid && tid === begins.tid)
  const starts = ofPage
    .filter(({ name, tid }) => name === 'FireAnimationFrame' && tid === begins.tid)
    .map(({ ts }) => ts)
    .filter((ts, k, all) => k === 0 || ts - all[k - 1]! > SAME_FRAME_US)
  const workMs = starts.slice(1).map(() => 0)
  for (const task of own) {
    const frame = starts.findLastIndex((ts) => ts <= task.ts + (task.dur ?? 0))
    if (frame >= 0 && frame < workMs.length) workMs[frame]! += (task.tdur ?? 0) / 1000
  }
  return {
    framesMs: shown.slice(1).map((ts, i) => ts - shown[i]!),
    workMs,
    allWorkMs: tasks.reduce((sum, { tdur = 0 }) => sum + tdur / 1000, 0) / MOVES,
  }
}

/** Callbacks of one frame follow each other at once, µs. */
const SAME_FRAME_US = 3000

/** Events that lie in no other of their thread: a thread's work is theirs. */
function outermost(events: readonly TraceEvent[]): readonly TraceEvent[] {
  const ends = new Map<string, number>()
  return events
    .filter(({ ph, tdur }) => ph === 'X' && tdur !== undefined)
    .toSorted((a, b) => a.ts - b.ts || (b.dur ?? 0) - (a.dur ?? 0))
    .filter(({ pid, tid, ts, dur = 0 }) => {
      const thread = `${pid} ${tid}`
      if (ts < (ends.get(thread) ?? 0)) return false
      ends.set(thread, ts + dur)
      return true
    })
}
