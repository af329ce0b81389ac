import { afterAll, beforeAll, expect, test } from 'vitest'
import { papersMade, type Visit, visit } from './visit'

let at: Visit

beforeAll(async () => {
  at = await visit({ serviceWorkers: 'allow' })
})
afterAll(() => at?.close())

test('the whole program works with the server gone, from the first visit on', async () => {
  const { page } = at
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined))
  await at.server.close()
  await at.context.setOffline(true)

  for (const address of ['', 'index.html', 'online.html']) {
    await page.goto(`${at.url}${address}`)
    await page.locator('.circuits button').first().waitFor()
  }

  // What is loaded only when it is needed: the demo, the readers of elevation files, the coast, the papers, the search for remedies
  await page.goto(at.url)
  await page.getByRole('button', { name: 'Plans', exact: true }).click()
  await page.getByRole('button', { name: 'Demo plan' }).click()
  await page.getByRole('button', { name: 'Stores line' }).click()
  await page.getByRole('heading', { name: 'What would mend it?' }).waitFor()
  await page.getByRole('button', { name: 'Papers', exact: true }).click()
  await papersMade(page)

  expect(at.faults).toEqual([])
})
