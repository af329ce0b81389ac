import { afterAll, beforeAll, expect, test } from 'vitest'
import { complaintsOf } from './axe'
import { type Visit, visit } from './visit'

let at: Visit
beforeAll(async () => {
  at = await visit()
  await at.page.locator('.circuits button', { hasText: 'River net' }).first().waitFor()
})
afterAll(() => at?.close())

const button = (name: string | RegExp) =>
  at.page.getByRole('button', { name, exact: typeof name === 'string' })

/** Selects a station by its name. */
async function pick(name: string) {
  const { page } = at
  await page.getByPlaceholder('Station, line or circuit').fill(name)
  await page.locator('.panel .rows button', { hasText: name }).first().click()
  await page.getByRole('heading', { name, level: 1, exact: true }).waitFor()
}

test('from a station the map shades how far one telephone more could stand, and prints it', async () => {
  const { page } = at
  await pick('Weir')
  await button('Show how far from here').click()
  await page.locator('.far-shade').first().waitFor({ state: 'attached' })
  await page.getByText('The shades lie over').waitFor()
  expect(await page.locator('.far .far-shade').count()).toBe(3)
  expect(await page.getByText(/^At worst \d+ m of wire from Weir\./).count()).toBe(1)
  expect(await complaintsOf(page)).toEqual([])
  await button('Papers').click()
  await page.getByRole('heading', { name: 'How far', exact: true }).first().waitFor()
  await expect.poll(() => page.locator('.sheet .far-outline').count()).toBe(3)
  expect(
    await page
      .locator('.sheet')
      .getByText(/^At worst \d+ m of wire from Weir\./)
      .count(),
  ).toBe(1)
  await page.keyboard.press('Escape')
  await button('Take it off the map').click()
  await expect.poll(() => page.locator('.far-shade').count()).toBe(0)
})

test('while a line is drawn its hint says how much wire it may have', async () => {
  const { page } = at
  await button('Line').click()
  const [x, y] = await page
    .locator('g.station .ring')
    .first()
    .evaluate((ring) => {
      const box = ring.getBoundingClientRect()
      return [box.x + box.width / 2, box.y + box.height / 2] as const
    })
  await page.mouse.click(x, y)
  await page.mouse.move(x - 60, y - 60)
  await button('How far?').click()
  await page.locator('.map-hint-words', { hasText: /at worst \d+ m/ }).waitFor()
  await button('Hide how far').click()
  await button('Put aside').click()
  await button('Select').click()
})

test('other ways that truly differ lie in their corridor, and each is taken by a click', async () => {
  const { page } = at
  await button('← The whole plan').click()
  await page.locator('.circuits button', { hasText: 'Kiln ringdown' }).first().click()
  await page.locator('.panel').getByRole('button', { name: 'Camp – Old kiln', exact: true }).first().click()
  await page.getByLabel('Others, dearer by at most').selectOption('20')
  await button('Suggest a route').click()
  await button('Way 2').waitFor()
  expect(await page.locator('.corridor-area').count()).toBe(1)
  const before = await page.locator('.suggested-way').getAttribute('d')
  await button('Way 2').click()
  await expect.poll(() => page.locator('.suggested-way').getAttribute('d')).not.toBe(before)
  expect(await complaintsOf(page)).toEqual([])
  await button('Route the line this way').click()
  await expect.poll(() => page.locator('.corridor-area').count()).toBe(0)
  await button('Undo').click()
})

test('every place of a circuit is tried for its supply, and the best is numbered on the map', async () => {
  const { page } = at
  await button('← The whole plan').click()
  await page.locator('.circuits button', { hasText: 'River net' }).first().click()
  await button('Try every place').click()
  await page.locator('.spot.best').waitFor({ state: 'attached' })
  const places = page.locator('ol.spots li')
  expect(await places.count()).toBeGreaterThan(1)
  expect(await places.first().textContent()).toContain('at Ford')
  expect(await complaintsOf(page)).toEqual([])
  await places.nth(1).getByRole('button').click()
  await expect.poll(() => page.locator('.spot').count()).toBe(0)
  await button('Undo').first().click()
  expect(at.faults).toEqual([])
})
