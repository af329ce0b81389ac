import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { complaintsOf } from './axe'
import { papersMade, type Visit, visit } from './visit'

let at: Visit
beforeAll(async () => {
  at = await visit()
  await at.page.locator('.zoom-buttons').waitFor()
})
afterAll(() => at?.close())

const button = (name: string) => at.page.getByRole('button', { name, exact: true })
const field = (label: string) => at.page.getByLabel(label, { exact: true })
const click = (x: number, y: number, modifiers: ('Shift' | 'Control')[] = []) =>
  at.page.locator('#map').click({ position: { x, y }, modifiers })
const deed = () => at.page.locator('.map-deed').textContent()
const standing = () => at.page.locator('.panel .standing').textContent()
const complaints = () => complaintsOf(at.page)
const count = (selector: string) => at.page.locator(selector).count()

beforeEach(async () => {
  await button('Plans').click()
  await button('New plan').click()
  await button('Select').click()
})

/** Two crank sets and a wire, by four clicks. */
async function fourClicks() {
  await button('Line').click()
  await click(250, 300)
  await click(750, 420)
  await button('Done').click()
}

test('four clicks lead from nothing to a verdict for two telephones and a wire, and one more joins a third', async () => {
  await fourClicks()
  await expect.poll(standing).toMatch(/(works|thin|fails) today/)
  expect(await count('.station .block')).toBe(2)
  expect(await field('Telephone: Station 1').inputValue()).toMatch(/^crank/)
  expect(await field('Telephone: Station 2').inputValue()).toMatch(/^crank/)
  expect(await complaints()).toEqual([])

  await click(500, 650)
  await expect.poll(() => count('.station .block')).toBe(3)
  await button('← The whole plan').click()
  expect(await count('.circuits button')).toBe(1)
  await button('Undo').click()
  await button('Undo').click()
  expect(await count('.station')).toBe(0)
})

test('a circuit without its telephones is not finished, says the one thing that it lacks, and has a button for it', async () => {
  await fourClicks()
  await field('Telephone: Station 2').selectOption('')
  await expect.poll(standing).toBe('not finished')
  expect(await count('.verdict.fails, .fail-mark')).toBe(0)
  expect(await count('.station .joint')).toBe(1)
  expect(await complaints()).toEqual([])
  await at.page.locator('.next-step button').click()
  await expect.poll(standing).toMatch(/today/)
  expect(await count('.station .joint')).toBe(0)
})

test('a line that ends on wire, and a station that is put on wire, are joined to it', async () => {
  await fourClicks()
  await button('Begin elsewhere').click()
  await click(500, 700)
  await click(500, 360)
  await expect.poll(deed).toMatch(/joined to the wire/)
  expect(await count('.station .joint')).toBe(1)
  await button('Station').click()
  await click(350, 324)
  await expect.poll(deed).toMatch(/joined to the wire/)
  expect(await count('.station .block')).toBe(4)
  await button('← The whole plan').click()
  expect(await count('.circuits button')).toBe(1)
})

test('a station that is dragged shows its wire and the verdict at the pointer, and says where it went', async () => {
  await fourClicks()
  await button('Select').click()
  const { mouse } = at.page
  const [x, y] = [750, 420]
  await mouse.move(x, y)
  await mouse.down()
  await mouse.move(x + 40, y + 60, { steps: 4 })
  await expect
    .poll(() => at.page.locator('.rubber-label').textContent())
    .toMatch(/of wire · Station 1 – Station 2 \w+/)
  await mouse.up()
  await expect.poll(deed).toMatch(/Station 2 moved .*m\.Undo$/)
  expect(await at.page.locator('[role=status]').allTextContents()).toContainEqual(
    expect.stringMatching(/moved/),
  )
})

test('several are taken by a box, moved, copied and deleted together', async () => {
  await fourClicks()
  await button('Select').click()
  const { mouse, keyboard } = at.page
  await keyboard.down('Shift')
  await mouse.move(180, 200)
  await mouse.down()
  await mouse.move(820, 520, { steps: 4 })
  await mouse.up()
  await keyboard.up('Shift')
  await at.page.getByRole('heading', { name: '2 stations and 1 line' }).waitFor()
  expect(await complaints()).toEqual([])
  await mouse.move(250, 300)
  await mouse.down()
  await mouse.move(280, 340, { steps: 3 })
  await mouse.up()
  await expect.poll(deed).toMatch(/^3 things moved/)
  await button('Duplicate them').click()
  await expect.poll(() => at.page.locator('.panel h1').textContent()).toBe('2 stations and 1 line')
  await button('Delete them').click()
  await expect.poll(deed).toMatch(/^3 things deleted/)
  await button('← The whole plan').count()
  expect(await count('.circuits button')).toBe(1)
})

test('under the lock nothing moves, and the place under the pointer is told without placing anything', async () => {
  await fourClicks()
  await button('Lock').click()
  await click(500, 700)
  await button('Select').click()
  const { mouse } = at.page
  await mouse.move(250, 300)
  await mouse.down()
  await mouse.move(350, 380, { steps: 3 })
  await mouse.up()
  await at.page.keyboard.press('Control+z')
  expect(await count('.station')).toBe(2)
  await at.page.locator('#map').click({ position: { x: 500, y: 600 }, button: 'right' })
  await expect.poll(() => at.page.locator('.map-menu p').textContent()).toMatch(/° [NS] .*° [EW]/)
  expect(await complaints()).toEqual([])
  await at.page.getByRole('menuitem', { name: 'Unlock the plan' }).click()
  await button('Undo').click()
  await expect.poll(() => count('.station')).toBe(0)
})

test('the measure tells distance and bearing and changes nothing', async () => {
  await button('Measure').click()
  await click(300, 300)
  await click(600, 300)
  await expect.poll(() => at.page.locator('.map-hint-words').textContent()).toMatch(/m · 0(89|90|91)°/)
  expect(await button('Undo').isDisabled()).toBe(true)
  expect(await complaints()).toEqual([])
})

test('a keep-out area closes by Enter', async () => {
  await button('Hazard').click()
  await at.page.locator('.map-hint select:visible').selectOption('keep-out')
  await click(300, 300)
  await click(500, 300)
  await click(400, 450)
  await at.page.keyboard.press('Enter')
  await expect.poll(() => count('.hazard.area, .area')).toBeGreaterThan(0)
  await expect.poll(deed).toMatch(/drawn/)
})

test('Back closes what is open, and undo inside the papers changes nothing behind them', async () => {
  await fourClicks()
  await button('Papers').click()
  await papersMade(at.page)
  await at.page.keyboard.press('Control+z')
  await at.page.goBack()
  await expect.poll(() => count('.papers')).toBe(0)
  expect(await count('.station .block')).toBe(2)
  await at.page.getByRole('heading', { name: 'Station 1 – Station 2' }).waitFor()
  await at.page.goBack()
  await at.page.getByRole('heading', { name: 'New plan' }).waitFor()
  expect(at.faults).toEqual([])
})

test('Back closes menus and dialogs, one a press, and leaves the page only after them', async () => {
  const isThere = (selector: string) => at.page.locator(selector).isVisible()
  // Who minds Back comes last of all that comes after the first screen.
  const isMinded = () => at.page.evaluate(() => (history.state as { open?: boolean } | null)?.open === true)
  await expect
    .poll(async () => {
      await at.page.keyboard.press('Escape')
      await button('Plans').click()
      await at.page.locator('.menu:popover-open').waitFor()
      return isMinded()
    })
    .toBe(true)
  await at.page.goBack()
  await expect.poll(() => isThere('.menu:popover-open')).toBe(false)
  await button('Help and keys').click()
  await at.page.locator('dialog.help').waitFor()
  await at.page.goBack()
  await expect.poll(() => isThere('dialog.help')).toBe(false)
  await button('Go to').click()
  await at.page.locator('dialog.ask').waitFor()
  await at.page.goBack()
  await expect.poll(() => isThere('dialog.ask')).toBe(false)
  await at.page.mouse.click(500, 500, { button: 'right' })
  await at.page.locator('.map-menu').waitFor()
  await at.page.goBack()
  await expect.poll(() => isThere('.map-menu')).toBe(false)
  expect(await at.page.getByLabel('Title of the plan').isVisible()).toBe(true)
})
