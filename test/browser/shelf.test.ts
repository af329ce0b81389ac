import { afterAll, beforeAll, expect, test } from 'vitest'
import { complaintsOf } from './axe'
import { type Visit, visit } from './visit'

let at: Visit
beforeAll(async () => {
  at = await visit()
})
afterAll(() => at?.close())

async function put(what: string, which: string, count: number, length?: number) {
  const { page } = at
  const shelf = page.getByRole('group', { name: 'Put on the shelf' })
  await shelf.getByLabel('What', { exact: true }).selectOption({ label: what })
  await shelf.getByLabel('Which').selectOption({ label: which })
  if (length !== undefined) await shelf.getByLabel('Length of each').fill(String(length))
  await shelf.getByLabel('How many').fill(String(count))
  await shelf.getByRole('button', { name: 'Put it there' }).click()
}

const shots = process.env.SHOTS
const shot = async (name: string) => {
  if (shots) await at.page.screenshot({ path: `${shots}/${name}.png` })
}

test('from an empty program a person comes by the shelf to a plan that works in under a minute', {
  timeout: 180_000,
}, async () => {
  const { page } = at
  await page.getByRole('button', { name: 'Plans', exact: true }).click()
  await page.getByRole('button', { name: 'New plan', exact: true }).click()
  const start = Date.now()
  await page.getByRole('button', { name: 'What can we do with what we have?' }).click()
  const dialog = page.getByRole('dialog', { name: 'What can we do with what we have?' })
  await put('Wire', 'Field wire WD-1A/TT', 1, 900)
  await put('Telephone', 'Electronic desk telephone with a real bell, 1 ringer equivalent', 2)
  await put('Cells and batteries', '9 V alkaline, 6LR61', 3)
  await dialog.getByLabel('Camp to Ford, as the wire goes').fill('700')
  await shot('shelf-filled')
  await dialog.getByRole('button', { name: 'Find nets' }).click()
  const cards = dialog
    .getByRole('list', { name: 'Nets, the best first' })
    .getByRole('listitem')
    .filter({ has: page.getByRole('button', { name: 'Make it the plan' }) })
  await cards.first().waitFor()
  await dialog.getByText('Every net that can be made of this was looked at').waitFor()
  await shot('shelf-found')
  expect(await complaintsOf(page)).toEqual([])
  await cards.first().getByText('How it is wired, terminal by terminal').click()
  await expect.poll(() => cards.first().locator('.hook-up').count()).toBe(1)
  await shot('shelf-wired')
  expect(await complaintsOf(page)).toEqual([])
  await cards.first().getByRole('button', { name: 'Make it the plan' }).click()
  await dialog.waitFor({ state: 'hidden' })
  // A verdict for today and one for the worst weather.
  await page.locator('.panel .standing, .panel .circuits').first().waitFor()
  expect(await page.locator('.panel .verdict.works').count()).toBeGreaterThanOrEqual(1)
  const seconds = (Date.now() - start) / 1000
  console.info(`by the shelf to a plan: ${seconds.toFixed(1)} s`)
  expect(seconds).toBeLessThan(60)
  await shot('shelf-taken')
  expect(at.faults).toEqual([])
})

test('what lies on the shelf is kept over a visit, and is told and printed as a list', {
  timeout: 120_000,
}, async () => {
  const { page } = at
  await page.reload()
  await page.getByRole('button', { name: 'Plans', exact: true }).click()
  await page.getByRole('button', { name: 'From what lies on the shelf…' }).click()
  const dialog = page.getByRole('dialog', { name: 'What can we do with what we have?' })
  await dialog.getByRole('button', { name: /^Remove Field wire WD-1A\/TT, 900 m from/ }).waitFor()
  expect(await dialog.getByRole('textbox', { name: '9 V alkaline, 6LR61' }).inputValue()).toBe('3')
  await page.emulateMedia({ media: 'print' })
  expect(await page.locator('.printed-list').isVisible()).toBe(true)
  expect(await page.locator('.printed-list tr').count()).toBe(3)
  expect(await dialog.getByRole('button', { name: 'Find nets' }).isVisible()).toBe(false)
  await shot('shelf-printed')
  await page.emulateMedia({ media: 'screen' })
  await dialog.getByRole('button', { name: 'Close' }).click()
})

test('stations on the map are joined in their own plan, and undo takes the net away again', {
  timeout: 180_000,
}, async () => {
  const { page } = at
  await page.getByRole('button', { name: 'Plans', exact: true }).click()
  await page.getByRole('button', { name: 'New plan', exact: true }).click()
  await page.getByRole('button', { name: 'Station', exact: true }).click()
  const map = page.locator('#map')
  const box = (await map.boundingBox())!
  for (const [x, y] of [
    [0.35, 0.4],
    [0.5, 0.55],
    [0.65, 0.4],
  ] as const)
    await page.mouse.click(box.x + box.width * x, box.y + box.height * y)
  await page.keyboard.press('Escape')
  await page.getByRole('button', { name: 'Plans', exact: true }).click()
  await page.getByRole('button', { name: 'From what lies on the shelf…' }).click()
  const dialog = page.getByRole('dialog', { name: 'What can we do with what we have?' })
  await put('Wire', 'Field wire WD-1A/TT', 50, 4000)
  await put('Telephone', 'Crank set, 1600 Ω ringer', 3)
  await dialog.getByRole('button', { name: 'Find nets' }).click()
  await dialog.getByRole('button', { name: 'Make it the plan' }).first().waitFor()
  await dialog.getByText(/was looked at|were judged/).waitFor()
  await shot('shelf-three')
  await page.emulateMedia({ colorScheme: 'dark' })
  await shot('shelf-three-dark')
  // The same dialog as above in other colours.
  expect(await complaintsOf(page, ['color-contrast'])).toEqual([])
  await page.emulateMedia({ colorScheme: 'light' })
  await dialog.getByRole('button', { name: 'Make it the plan' }).first().click()
  await dialog.waitFor({ state: 'hidden' })
  await shot('shelf-three-taken')
  await page.getByRole('button', { name: 'Undo', exact: false }).first().click()
  await page.getByText('Nothing is wired yet.').waitFor()
  expect(at.faults).toEqual([])
})
