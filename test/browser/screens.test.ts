import { afterEach, describe, expect, test } from 'vitest'
import { todays } from '../cases'
import { complaintsOf } from './axe'
import { openAll, papersMade, type Visit, visit } from './visit'

/** The narrowest phone that is still sold in numbers; the least target that WCAG 2.2 asks for at level AAA (2.5.5). */
const PHONE = { width: 360, height: 740 }
const LEAST_TARGET_PX = 44

let at: Visit
afterEach(() => at?.close())

const complaints = () => complaintsOf(at.page)

const openDemo = () => at.page.locator('.circuits button').first().waitFor()

describe('the studies of a circuit', () => {
  const SCREENS = [
    ['light', { width: 1440, height: 900 }],
    ['dark', PHONE],
  ] as const
  test.each(todays(SCREENS, 2))('read well and stay on the %s screen', async (colorScheme, viewport) => {
    at = await visit({ colorScheme, viewport, touch: viewport === PHONE })
    const { page } = at
    await openDemo()
    await page.getByRole('button', { name: 'Kiln ringdown' }).first().click()
    await page.getByText('Where is the fault?').waitFor()
    await openAll(page, '.card')
    await page.getByText('(yours now)').first().waitFor()
    await page.getByRole('img', { name: /^Battery volts/ }).waitFor()
    await page.getByRole('button', { name: 'Add what is known' }).click()
    await page.getByLabel('Ohms read, Ω').fill('80')
    await page.keyboard.press('Tab')
    await page.getByText('The map shows it').waitFor()
    expect(await page.locator('.fault').evaluate((mark) => mark.checkVisibility())).toBe(true)
    const wide = await page.locator('.panel').evaluate((panel) => panel.scrollWidth - panel.clientWidth)
    expect(wide).toBe(0)
    expect(await complaints()).toEqual([])
    expect(at.faults).toEqual([])
  })
})

describe('the papers', () => {
  test('lie over the table, and nothing of it shows through', async () => {
    at = await visit({ viewport: { width: 1024, height: 700 } })
    await openDemo()
    await at.page.getByRole('button', { name: 'Papers', exact: true }).click()
    await papersMade(at.page)
    const through = await at.page.evaluate(() => {
      const papers = document.querySelector('.papers')!
      // What is inert is passed over when one asks what lies on top, though it is seen.
      for (const inert of document.querySelectorAll<HTMLElement>('[inert]')) inert.inert = false
      const seen: string[] = []
      for (let x = 20; x < innerWidth; x += 50)
        for (let y = 20; y < innerHeight; y += 50) {
          const top = document.elementsFromPoint(x, y)[0]
          if (top && !papers.contains(top)) seen.push(`${top.tagName} ${top.className}`)
        }
      return seen
    })
    expect(through).toEqual([])
    await at.page.keyboard.press('Escape')
    await expect.poll(() => at.page.locator('.papers').count()).toBe(0)
    const focused = () => at.page.evaluate(() => document.activeElement?.textContent)
    await expect.poll(focused).toBe('Papers')
  })
})

describe('a phone', () => {
  test('shows map and panel with nothing off its side, and buttons that a thumb hits', async () => {
    at = await visit({ viewport: PHONE, touch: true })
    await openDemo()
    const width = () => at.page.evaluate(() => document.documentElement.scrollWidth)
    expect(await width()).toBe(PHONE.width)
    const map = (await at.page.locator('#map').boundingBox())!
    expect(map.width).toBe(PHONE.width)
    expect(map.height).toBeGreaterThan(PHONE.height / 4)
    const bad = await at.page.evaluate(
      (least) =>
        [...document.querySelectorAll<HTMLElement>('.top-bar button, #map button')]
          .filter((button) => button.checkVisibility())
          .filter((button) => {
            const { left, right, height } = button.getBoundingClientRect()
            return height < least || left < 0 || right > innerWidth
          })
          .map((button) => button.textContent),
      LEAST_TARGET_PX,
    )
    expect(bad).toEqual([])
    await at.page.locator('.circuits button').first().tap()
    await at.page.locator('.margins').first().waitFor()
    expect(await width()).toBe(PHONE.width)
    expect(at.faults).toEqual([])
  })
})
