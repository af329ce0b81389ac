import type { Browser, Page } from 'playwright-core'
import { preview } from 'vite'
import { findBrowser } from '../../scripts/browser.mjs'
import { builtSite } from '../../scripts/site.mjs'
import { launchChromium } from '../browser/chromium'

interface Site {
  /** The folder of the site as it is shipped. */
  readonly folder: string
  readonly url: string
  readonly browser: Browser
}

let site: Promise<Site> | undefined
let close: () => Promise<void> = async () => undefined

/** The site as people get it, built and served once, and a browser to visit it with. */
export const servedSite = (): Promise<Site> => {
  site ??= open()
  return site
}

/** Lets go of the browser and of the site, where a row has asked for them. */
export const closeSite = (): Promise<void> => close()

async function open(): Promise<Site> {
  const folder = await builtSite()
  const server = await preview({
    logLevel: 'warn',
    build: { outDir: folder },
    preview: { port: 0, host: '127.0.0.1' },
  })
  // As people have it, not the quick one of the tests.
  const browser = await launchChromium([], findBrowser())
  close = async () => {
    await browser.close()
    await server.close()
  }
  return { folder, url: server.resolvedUrls!.local[0]!, browser }
}

/** A page that has shown its first figures, those of the demo, and has laid down what it keeps for when there is no network. */
export async function freshPage(): Promise<Page> {
  const { browser, url } = await servedSite()
  const page = await (await browser.newContext({ viewport: { width: 1440, height: 900 } })).newPage()
  page.setDefaultTimeout(60_000)
  await page.goto(url)
  await page.locator('.circuits button').first().waitFor()
  await page.evaluate(() => navigator.serviceWorker.ready)
  await page.waitForTimeout(1000)
  return page
}

/** How long a hand holds a file over the page before it lets go, ms. */
const HELD_MS = 200

/** Lets a plan file fall on the page; ms from there until its title, its verdicts and its drawing are on the screen. */
export const openOnPage = (page: Page, text: string): Promise<number> =>
  page.evaluate(
    async ({ text, heldMs }) => {
      const drop = new DataTransfer()
      drop.items.add(new File([text], 'bench.plan.geojson'))
      const title = JSON.parse(text).plan.title as string
      const frame = () => new Promise((done) => requestAnimationFrame(done))
      const tell = (type: string) =>
        document.body.dispatchEvent(
          new DragEvent(type, { dataTransfer: drop, bubbles: true, cancelable: true }),
        )
      tell('dragover')
      await new Promise((done) => setTimeout(done, heldMs))
      const start = performance.now()
      tell('drop')
      while (document.querySelector('.panel h1')?.textContent !== title) {
        if (performance.now() - start > 60_000) throw new Error('the plan never came')
        await frame()
      }
      // The next frame begins when the one that shows the plan is painted.
      await frame()
      await new Promise((done) => setTimeout(done))
      return performance.now() - start
    },
    { text, heldMs: HELD_MS },
  )

/** Bytes of the page's script heap, after its rubbish is collected. */
export async function heapBytes(page: Page): Promise<number> {
  const session = await page.context().newCDPSession(page)
  await session.send('HeapProfiler.collectGarbage')
  await session.send('HeapProfiler.collectGarbage')
  const { usedSize } = await session.send('Runtime.getHeapUsage')
  await session.detach()
  return usedSize
}

/** Counts what a processor works on the page's own thread from now on; asked, it gives the milliseconds so far. */
export async function threadWork(page: Page): Promise<() => Promise<number>> {
  const session = await page.context().newCDPSession(page)
  await session.send('Performance.enable', { timeDomain: 'threadTicks' })
  const taken = async () => {
    const { metrics } = await session.send('Performance.getMetrics')
    return 1000 * metrics.find(({ name }) => name === 'TaskDuration')!.value
  }
  const before = await taken()
  return async () => (await taken()) - before
}
