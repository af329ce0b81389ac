import type { Page } from 'playwright-core'
import { servedSite } from './browser-page'

/** What a drag came to, by Chromium's own trace. */
interface Drag {
  /** Time from one frame on the screen to the next, ms. */
  readonly framesMs: readonly number[]
  /** The page's longest task, and its work for one move, ms. */
  readonly longestTaskMs: number
  readonly workPerMoveMs: number
}

const MOVES = 120

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
  const { browser } = await servedSite()
  const from = await middleStation(page)
  // A first drag, let go: what is drawn once, and what is compiled once, is done.
  await drag(page, from, 30)
  await page.waitForTimeout(800)
  await browser.startTracing(page, {
    categories: [
      'disabled-by-default-devtools.timeline',
      'devtools.timeline',
      'disabled-by-default-devtools.timeline.frame',
      'blink.user_timing',
    ],
  })
  await drag(page, from, MOVES)
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

function readTrace(events: readonly TraceEvent[]): Drag {
  const mark = (name: string) => events.find((event) => event.name === name)!
  const [begins, ends] = [mark('drag-begins'), mark('drag-ends')]
  const within = events.filter(({ ts, pid }) => ts >= begins.ts && ts <= ends.ts && pid === begins.pid)
  const shown = within.filter(({ name }) => name === 'DrawFrame').map(({ ts }) => ts / 1000)
  const tasks = within.filter(({ name, tid, ph }) => name === 'RunTask' && ph === 'X' && tid === begins.tid)
  return {
    framesMs: shown.slice(1).map((ts, i) => ts - shown[i]!),
    longestTaskMs: Math.max(0, ...tasks.map(({ dur = 0 }) => dur / 1000)),
    workPerMoveMs: tasks.reduce((sum, { tdur, dur = 0 }) => sum + (tdur ?? dur) / 1000, 0) / MOVES,
  }
}
