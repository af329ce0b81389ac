import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { afterAll, beforeAll, expect, inject, test } from 'vitest'
import { kept, papersMade, type Visit, visit } from './visit'

let at: Visit
const addressOf = (name: string) => pathToFileURL(join(inject('site'), name)).href

beforeAll(async () => {
  at = await visit({ serviceWorkers: 'block' })
})
afterAll(() => at?.close())

test('the one file opens from a disk: demo, ground, remedies, papers, and a draft after it is opened again', async () => {
  const { page } = at
  await page.goto(addressOf('Fieldpair.html'))
  await page.getByRole('button', { name: 'Stores line' }).click()
  await page.getByRole('heading', { name: 'What would mend it?' }).waitFor()
  await page.getByRole('button', { name: 'Papers', exact: true }).click()
  await papersMade(page)
  await page.getByRole('button', { name: 'Close', exact: true }).click()

  const title = page.getByLabel('Title of the plan')
  await title.fill('Kept on the stick')
  await title.press('Enter')
  await kept(page, 'Kept on the stick')
  await page.reload()
  await page.locator('.circuits button').first().waitFor()
  expect(await page.getByLabel('Title of the plan').inputValue()).toBe('Kept on the stick')
  expect(at.faults).toEqual([])
})

test('it says what a page from a disk cannot do, and who can read its drafts', async () => {
  const { page } = at
  await page.getByRole('button', { name: 'Plans', exact: true }).click()
  const line = page.locator('.release')
  expect(await line.textContent()).toMatch(
    /Version \d+\.\d+\.\d+ [0-9a-f]{8}: the whole program is this one file/,
  )
  expect(await line.textContent()).toContain('Other pages opened from this disk can read the drafts')
})

test('its policy lets in nothing but what it holds', async () => {
  const { page } = at
  const policy = await page.locator('meta[http-equiv="Content-Security-Policy"]').getAttribute('content')
  expect(policy).not.toMatch(/unsafe-inline|https?:/)
  const ran = await page.evaluate(() => {
    const script = document.createElement('script')
    script.textContent = 'window.planted = true'
    document.head.append(script)
    return 'planted' in window
  })
  expect(ran).toBe(false)
  at.faults.length = 0
})

test('the site opened from a disk says how to start', async () => {
  const { page } = at
  await page.goto(addressOf('index.html'))
  await page.getByText('Open Fieldpair.html, which lies beside it').waitFor()
})
