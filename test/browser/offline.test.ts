import { afterAll, beforeAll, expect, test } from 'vitest'
import { type Visit, visit } from './visit'

let at: Visit

beforeAll(async () => {
  at = await visit()
})
afterAll(() => at?.close())

test('opens again with the server gone, from the first visit on', async () => {
  await at.page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined))
  await at.server.close()
  await at.context.setOffline(true)
  for (const page of ['', 'index.html', 'online.html']) {
    await at.page.goto(`${at.url}${page}`)
    expect(await at.page.title()).toBe('Fieldpair')
  }
})
