import type { Browser, BrowserContext, Page } from 'playwright-core'
import { expect, inject } from 'vitest'
import { launchChromium } from './chromium'
import { type FaultyServer, serveFaulty } from './faulty-server'

export interface Visit {
  readonly page: Page
  readonly context: BrowserContext
  readonly server: FaultyServer
  readonly url: string
  /** What must stay empty: errors of the page, words on its console, requests that failed or went elsewhere. */
  readonly faults: string[]
  readonly close: () => Promise<void>
}

/** Short of a test's own limit, so that what was waited for is named; far beyond what a busy machine needs. */
const PATIENCE_MS = 20_000

/** `allow` to go on with no network: all that is then kept costs each visit two seconds, so it is left out elsewhere. */
type ServiceWorkers = 'allow' | 'block'

let launched: Promise<Browser> | undefined

/** One browser for all files that a process tests, which ends with it; who visits in a context of his own has never been there. */
async function browser(): Promise<Browser> {
  if (launched && (await launched).isConnected()) return launched
  launched = launchChromium()
  return launched
}

/** Somebody who has never been there, with no page open yet. */
export async function newcomer(serviceWorkers: ServiceWorkers = 'block'): Promise<BrowserContext> {
  const viewport = { width: 1440, height: 900 }
  const context = await (await browser()).newContext({ viewport, serviceWorkers })
  context.setDefaultTimeout(PATIENCE_MS)
  return context
}

const browserWithCamera = (film: string): Promise<Browser> =>
  launchChromium([
    '--use-fake-ui-for-media-stream',
    '--use-fake-device-for-media-stream',
    `--use-file-for-fake-video-capture=${film}`,
  ])

interface VisitOptions {
  readonly viewport?: { readonly width: number; readonly height: number }
  readonly colorScheme?: 'light' | 'dark'
  readonly touch?: boolean
  readonly serviceWorkers?: ServiceWorkers
  /** A film of JPEG pictures that the camera sees, again and again. */
  readonly camera?: string
  /** Before the page is asked for: what else should come in the place of some file. */
  readonly prepare?: (context: BrowserContext) => Promise<unknown>
}

/** Serves the site on a free port and opens it in a browser that has never been there. */
export async function visit({
  viewport = { width: 1440, height: 900 },
  colorScheme = 'light',
  touch = false,
  serviceWorkers = 'block',
  camera,
  prepare,
}: VisitOptions = {}): Promise<Visit> {
  const server = await serveFaulty(inject('site'))
  const { url } = server
  const own = camera ? await browserWithCamera(camera) : undefined
  const context = await (own ?? (await browser())).newContext({
    viewport,
    colorScheme,
    hasTouch: touch,
    serviceWorkers,
  })
  const page = await context.newPage()
  page.setDefaultTimeout(PATIENCE_MS)
  const faults: string[] = []
  page.on('pageerror', (error) => faults.push(String(error)))
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text())
  })
  page.on('requestfailed', (request) => {
    const why = request.failure()?.errorText
    // A request that the page itself takes back, such as for a worker it no longer wants, is no fault.
    if (why !== 'net::ERR_ABORTED') faults.push(`${request.url()}: ${why}`)
  })
  page.on('response', (response) => {
    if (response.status() >= 400) faults.push(`${response.url()}: ${response.status()}`)
  })
  context.on('request', (request) => {
    if (/^https?:/.test(request.url()) && !request.url().startsWith(url))
      faults.push(`asked ${request.url()}`)
  })
  await prepare?.(context)
  await page.goto(url)
  return {
    page,
    context,
    server,
    url,
    faults,
    close: async () => {
      // A request that a test answers itself may still be under way.
      await context.unrouteAll({ behavior: 'ignoreErrors' })
      await context.close()
      await own?.close()
      await server.close()
    },
  }
}

/** Waits until the map can be worked on: its tools come after the plan is drawn. */
export const toolsAreThere = async (page: Page) => {
  await page.locator('.station').first().waitFor()
  await page.locator('.map-canvas[data-tool]').waitFor()
}

/** Waits until the demo's ground is known: papers that are made before it comes are made again. */
export const groundIsThere = (page: Page) => page.locator('.contour').first().waitFor({ state: 'attached' })

/** Waits until every sheet lies there: the papers can be printed then. */
export const papersMade = async (page: Page) => {
  // The button still stands as it stood before the last choice until the page is drawn anew.
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done))))
  await page.locator('.papers-acts button:enabled', { hasText: 'Print' }).waitFor()
}

/** Opens everything that is shown on demand, until nothing is closed and nothing more comes. */
export const openAll = (page: Page, within = 'body') =>
  page.evaluate(async (within) => {
    const part = document.querySelector(within)!
    let before = ''
    for (let still = 0; still < 4; ) {
      const closed = part.querySelectorAll<HTMLDetailsElement>('details:not([open])')
      for (const details of closed) details.open = true
      await new Promise((resolve) => setTimeout(resolve, 60))
      const text = part.textContent ?? ''
      still = closed.length === 0 && text === before ? still + 1 : 0
      before = text
    }
  }, within)

/** Waits until a plan with these words in it lies on the browser's disk. */
export const kept = (page: Page, words: string) =>
  expect
    .poll(() =>
      page.evaluate(async (words) => {
        const answer = <T>(request: IDBRequest<T>) =>
          new Promise<T>((done, fail) => {
            request.onsuccess = () => done(request.result)
            request.onerror = () => fail(request.error)
          })
        let isKept = false
        for (const { name } of await indexedDB.databases()) {
          const database = await answer(indexedDB.open(name!))
          if (database.objectStoreNames.contains('drafts'))
            for (const draft of await answer(database.transaction('drafts').objectStore('drafts').getAll()))
              if (String(draft.text).includes(words)) isKept = true
          database.close()
        }
        return isKept
      }, words),
    )
    .toBe(true)
