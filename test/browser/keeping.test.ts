import type { BrowserContext, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, expect, inject, test } from 'vitest'
import { NOTICES } from '../../src/storage/keeping-notices'
import { type FaultyServer, serveFaulty } from './faulty-server'
import { kept, newcomer } from './visit'

let server: FaultyServer
let context: BrowserContext
let page: Page
let asked: string[]

beforeAll(async () => {
  server = await serveFaulty(inject('site'))
})
afterAll(async () => {
  await server?.close()
})
beforeEach(async () => {
  context = await newcomer()
  page = await context.newPage()
  asked = []
  page.on('dialog', (dialog) => {
    asked.push(dialog.type())
    void dialog.accept()
  })
})
afterEach(() => context.close())

const started = (at: Page) => at.locator('.circuits button').first().waitFor()
const title = (at: Page) => at.getByLabel('Title of the plan')
const notice = (words: string) => page.locator('.notice', { hasText: words })
async function type(at: Page, text: string) {
  await title(at).fill('')
  await title(at).pressSequentially(text)
}

test('storage denied: the program starts, says so, and asks before the work is left', async () => {
  await page.addInitScript(() => {
    for (const name of ['indexedDB', 'localStorage', 'sessionStorage', 'caches'])
      Object.defineProperty(window, name, {
        get: () => {
          throw new DOMException('denied', 'SecurityError')
        },
      })
  })
  const failures: string[] = []
  page.on('pageerror', (error) => failures.push(String(error)))
  await page.goto(server.url)
  await started(page)
  await notice(NOTICES.nowhere).waitFor()
  await page.reload()
  await started(page)
  expect(asked).toEqual([])
  await notice(NOTICES.nowhere).waitFor()
  await type(page, 'Drawn all the same')
  await page.reload()
  expect(asked).toEqual(['beforeunload'])
  expect(failures).toEqual([])
})

test('a full disk: says so, asks before the work is left, and keeps it by itself when there is room', async () => {
  const browser = await context.newCDPSession(page)
  const origin = new URL(server.url).origin
  // Before the first visit: the browser counts anew only now and then.
  await browser.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 })
  await page.goto(server.url)
  await started(page)
  await type(page, 'Too much for this disk')
  await notice(NOTICES.full).waitFor()
  expect(await notice(NOTICES.full).getByRole('button').allTextContents()).toContain('Save as a file…')
  await browser.send('Storage.overrideQuotaForOrigin', { origin })
  await notice(NOTICES.full).waitFor({ state: 'detached', timeout: 15_000 })
  await page.reload()
  await started(page)
  expect([asked, await title(page).inputValue()]).toEqual([[], 'Too much for this disk'])
})

test('damaged records: the good plan opens, the others are said and their text is offered', async () => {
  await page.goto(server.url)
  await started(page)
  await type(page, 'Good net')
  await kept(page, 'Good net')
  await page.evaluate(async () => {
    const request = indexedDB.open('fieldpair /')
    await new Promise((done) => request.addEventListener('success', done))
    const store = request.result.transaction('drafts', 'readwrite').objectStore('drafts')
    const later = { revision: 1, title: 'Bad', savedAt: new Date(), order: 9e15 }
    store.put({ key: 'a' })
    store.put({ ...later, key: 'b', text: 7 })
    await new Promise((done) => {
      store.put({ ...later, key: 'c', text: '{"type":' }).addEventListener('success', done)
    })
    request.result.close()
    sessionStorage.clear()
  })
  await page.reload()
  await started(page)
  expect(await title(page).inputValue()).toBe('Good net')
  await notice(NOTICES.unreadable).waitFor()
  await page.getByRole('button', { name: 'Plans', exact: true }).click()
  await expect.poll(() => page.getByRole('button', { name: /^Save the text of/ }).count()).toBe(3)
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page
      .getByRole('button', { name: /^Save the text of Bad/ })
      .first()
      .click(),
  ])
  expect(file.suggestedFilename()).toBe('Bad.txt')
})

test('two windows on one plan work on it together, with no server, and it is kept once', async () => {
  await page.goto(server.url)
  await started(page)
  const entitle = async (at: Page, text: string) => {
    await type(at, text)
    await title(at).press('Tab')
  }
  await entitle(page, 'Start')
  await kept(page, 'Start')
  const other = await context.newPage()
  await other.goto(server.url)
  await started(other)
  for (const each of [page, other]) await each.getByText('One plan in 2 windows').waitFor()
  await entitle(other, 'Right')
  await expect.poll(() => title(page).inputValue()).toBe('Right')
  await entitle(page, 'Left')
  await expect.poll(() => title(other).inputValue()).toBe('Left')
  await kept(page, 'Left')
  await other.close()
  await page.getByText('One plan in 2 windows').waitFor({ state: 'detached' })
  await page.getByRole('button', { name: 'Plans', exact: true }).click()
  expect(await page.getByRole('button', { name: /^Remove (Start|Right)/ }).count()).toBe(0)
})

test('where windows cannot hear each other both ways are kept, told when it is so, and a double click on Remove loses neither', async () => {
  await context.addInitScript(() => Reflect.deleteProperty(globalThis, 'BroadcastChannel'))
  await page.goto(server.url)
  await started(page)
  await type(page, 'Start')
  await kept(page, 'Start')
  const other = await context.newPage()
  await other.goto(server.url)
  await started(other)
  await type(other, 'Right')
  await kept(other, 'Right')
  await type(page, 'Left')
  await notice(NOTICES.parted).waitFor()
  await page.getByRole('button', { name: 'Plans', exact: true }).click()
  const remove = page.getByRole('button', { name: /^Remove Right/ })
  await remove.dblclick()
  await page.getByRole('button', { name: 'Undo: keep Right' }).click()
  await remove.waitFor()
})

test('a half-drawn line comes back after a reload, and can be drawn on', async () => {
  await page.goto(server.url)
  await started(page)
  await page.getByRole('button', { name: 'Plans', exact: true }).click()
  await page.getByRole('button', { name: 'New plan' }).click()
  await page.getByRole('button', { name: 'Line', exact: true }).click()
  const box = (await page.locator('.map-canvas').boundingBox())!
  const click = (x: number, y: number) => page.mouse.click(box.x + x, box.y + y)
  await click(300, 300)
  await click(400, 350)
  await page.waitForTimeout(900)
  await page.reload()
  await page.locator('.map-deed', { hasText: 'half drawn' }).waitFor()
  await click(600, 400)
  await page.getByRole('button', { name: 'Done', exact: true }).click()
  await page.locator('.panel h1').waitFor()
  await page.getByRole('button', { name: 'Undo', exact: true }).click()
  expect(await page.locator('.map-drawing .station').count()).toBe(0)
})
