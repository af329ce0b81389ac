import { cpSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { BrowserContext, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, inject, test } from 'vitest'
import { nameRelease } from '../../vite/release'
import { isTurn } from '../cases'
import { type Fault, type FaultyServer, serveFaulty } from './faulty-server'
import { kept, newcomer } from './visit'

let server: FaultyServer
let context: BrowserContext
let page: Page
let older: string
let newer: string

const nameOf = (folder: string) =>
  /name="release" content="([^"]+)"/.exec(readFileSync(join(folder, 'index.html'), 'utf8'))![1]!

/** What a first visit asks for, and the papers: a release of that is kept as the whole one of the offline test is, in half the time. */
async function askedAtFirst(): Promise<(path: string) => boolean> {
  server = await serveFaulty(inject('site'))
  context = await newcomer()
  page = await context.newPage()
  await page.goto(server.url)
  await works()
  await page.locator('.zoom-buttons').waitFor()
  await context.close()
  await server.close()
  const asked = new Set(server.asked.map((url) => url.slice(1)))
  return (path) => path === './' || path === 'online.html' || asked.has(path) || /papers-/.test(path)
}

/** A copy of the program that keeps some of its files; also under other names, as a build after an edit has them. */
function makeRelease(isKept: (path: string) => boolean, isEdited: boolean): string {
  const folder = mkdtempSync(join(tmpdir(), 'fieldpair-release-'))
  cpSync(inject('site'), folder, { recursive: true, filter: (path) => !/Fieldpair\.html$|\.zip$/.test(path) })
  const assets = readdirSync(join(folder, 'assets'))
  const entry = assets.find((name) => /^index-.*\.js$/.test(name))!
  const renamed = isEdited ? 'index-newer.js' : entry
  renameSync(join(folder, 'assets', entry), join(folder, 'assets', renamed))
  const name = nameOf(folder)
  for (const page of ['index.html', 'online.html']) {
    const text = readFileSync(join(folder, page), 'utf8')
    writeFileSync(join(folder, page), text.replaceAll(entry, renamed).replace(name, '{{release}}'))
  }
  nameRelease(folder)
  const list = join(folder, 'kept-files.js')
  const [, words, json] = /^([^{]+)(.+)$/s.exec(readFileSync(list, 'utf8'))!
  const { name: newName, files } = JSON.parse(json!)
  const kept = Object.entries(files).filter(([path]) => isKept(path) || path.endsWith(renamed))
  writeFileSync(list, `${words}${JSON.stringify({ name: newName, files: Object.fromEntries(kept) })}`)
  return folder
}

beforeAll(async () => {
  const isKept = await askedAtFirst()
  older = makeRelease(isKept, false)
  newer = makeRelease(isKept, true)
})
afterAll(() => {
  for (const folder of [older, newer]) rmSync(folder, { recursive: true, force: true })
})
beforeEach(async () => {
  server = await serveFaulty(older)
  context = await newcomer('allow')
  page = await context.newPage()
})
afterEach(async () => {
  await context.close()
  await server.close()
})

const shown = () => page.locator('meta[name="release"]').getAttribute('content')
const works = () => page.locator('.circuits button').first().waitFor()
const ready = () => page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined))
/** Has the browser look for a newer release, and waits for what comes of it. */
const look = () =>
  page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready
    await registration.update().catch(() => undefined)
    const { installing } = registration
    if (installing)
      await new Promise<void>((done) => {
        installing.addEventListener('statechange', () => {
          if (installing.state !== 'installing') done()
        })
      })
    return registration.waiting ? 'whole' : 'not whole'
  })

async function visitOnce() {
  await page.goto(server.url)
  await works()
  await ready()
}

test('what is not a whole release (a page to sign in, 404, 500, a line that breaks) replaces nothing; what is whole waits for the windows that are open', async () => {
  await visitOnce()
  server.fault = () => 'html'
  expect(await look(), 'a page to sign in, in the place of everything').toBe('not whole')
  server.folders.set('/', newer)
  const isPiece = (path: string) => path.endsWith('index-newer.js')
  for (const fault of [404, 500, 'html', 'drop'] as const) {
    server.fault = (path) => (isPiece(path) ? fault : undefined)
    expect(await look(), String(fault)).toBe('not whole')
  }
  await page.reload()
  await works()
  expect(await shown()).toBe(nameOf(older))
  await page.getByRole('button', { name: 'Papers', exact: true }).click()
  await page.locator('.papers-bar').waitFor()

  // A piece that is slow is not waited for.
  const asked = server.asked.length
  server.fault = (path) => (isPiece(path) ? 'held' : undefined)
  const looking = look()
  await expect.poll(() => server.asked.slice(asked).some(isPiece)).toBe(true)
  const other = await context.newPage()
  await other.goto(server.url)
  await other.locator('.circuits button').first().waitFor()
  server.letGo()
  expect(await looking).toBe('whole')

  await page.reload()
  await works()
  expect(await shown()).toBe(nameOf(older))
  await page.getByRole('button', { name: 'Plans', exact: true }).click()
  await page.getByText('A newer version is here, whole.').waitFor()
  await other.close()
  await page.getByRole('button', { name: 'Open it now' }).click()
  await expect.poll(shown).toBe(nameOf(newer))
  await works()
  expect(await page.evaluate(async () => (await caches.keys()).length)).toBe(1)
})

test.skipIf(!isTurn(0, 2))(
  'a release comes whole though the browser’s other cache keeps the old files for an hour, and opens at the next visit',
  async () => {
    server.headers = { 'cache-control': 'max-age=3600' }
    await visitOnce()
    server.folders.set('/', newer)
    expect(await look()).toBe('whole')
    // Not under the hand.
    expect(await shown()).toBe(nameOf(older))
    await page.reload()
    await expect.poll(shown).toBe(nameOf(newer))
    await works()
  },
)

describe('on the very first visit', () => {
  test.each<Fault>([404, 'html'])(
    '(%s) a missing piece is told, with a button that mends it',
    async (fault) => {
      server.fault = (path) => (/first-screen.*js$/.test(path) ? fault : undefined)
      await page.goto(server.url)
      const told = page.locator('#start.failed')
      await told.waitFor()
      expect(await told.textContent()).toContain('A piece of the program has not arrived')
      server.fault = () => undefined
      await told.getByRole('button', { name: 'Load the program anew' }).click()
      await works()
    },
  )

  test('a page in the place of a script is not kept, and the panel says so', async () => {
    server.fault = (path) => (/papers-.*js$/.test(path) ? 'html' : undefined)
    await page.goto(server.url)
    await works()
    await page.getByRole('button', { name: 'Plans', exact: true }).click()
    await page.getByText('not kept for use without a network').waitFor()
    // What is wanted of it is told, and mended when it can be.
    await page.keyboard.press('Escape')
    await page.getByRole('button', { name: 'Papers', exact: true }).click()
    const told = page.locator('.failure', { hasText: 'A piece of the program has not arrived' })
    await told.waitFor()
    server.fault = () => undefined
    // The page of before shows circuits as well.
    const anew = page.waitForEvent('load')
    await told.getByRole('button', { name: 'Load the program anew' }).click()
    await anew
    await works()
    await page.getByRole('button', { name: 'Plans', exact: true }).click()
    await page.getByText('ready without a network').waitFor({ state: 'attached' })
    expect(await page.locator('.release').textContent()).toContain(`Version ${nameOf(older)}`)
  })
})

test.skipIf(!isTurn(1, 2))(
  'two copies of the program on one server leave each other’s releases and plans alone',
  async () => {
    server.folders.clear()
    server.folders.set('/one/', older)
    server.folders.set('/two/', newer)
    const open = async (path: string) => {
      await page.goto(`${server.url}${path}`)
      await works()
      await ready()
    }
    const title = page.getByLabel('Title of the plan')
    await open('one/')
    await title.fill('Of the first')
    await kept(page, 'Of the first')
    await open('two/')
    expect(await title.inputValue()).not.toBe('Of the first')
    await title.fill('Of the second')
    await kept(page, 'Of the second')
    server.fault = () => 'drop'
    for (const [path, folder, text] of [
      ['one/', older, 'Of the first'],
      ['two/', newer, 'Of the second'],
    ] as const) {
      await open(path)
      expect([await shown(), await title.inputValue()]).toEqual([nameOf(folder), text])
    }
  },
)
