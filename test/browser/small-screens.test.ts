import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { papersMade, toolsAreThere, type Visit, visit } from './visit'

const PHONE = { width: 360, height: 640 }
const ON_ITS_SIDE = { width: 844, height: 390 }
/** Reach of a thumb: what is used all the time lies in the lowest fifth of the screen. */
const THUMB = 0.2

let at: Visit
async function open(viewport: typeof PHONE) {
  at = await visit({ viewport, touch: true })
  await toolsAreThere(at.page)
}
const box = async (selector: string) => (await at.page.locator(selector).first().boundingBox())!
const button = (name: string) => at.page.getByRole('button', { name, exact: true })

/** Labels of the buttons that a screen shows cut off, or not at all. */
const cutOff = (within: string) =>
  at.page.evaluate(
    (selector) =>
      [...document.querySelectorAll<HTMLElement>(`${selector} button, ${selector} select`)]
        .filter((part) => part.checkVisibility())
        .filter((part) => {
          const { left, right, top, bottom } = part.getBoundingClientRect()
          return left < 0 || top < 0 || right > innerWidth + 0.5 || bottom > innerHeight + 0.5
        })
        .map((part) => part.textContent),
    within,
  )

/** Opens the menu of a leg: along the wires until no station, bend or hazard lies there. */
async function menuOfLeg() {
  const points = await at.page.locator('path.wire').evaluateAll((wires) =>
    (wires as SVGPathElement[])
      .flatMap((wire) => {
        const { a, d, e, f } = wire.getScreenCTM()!
        return [0.15, 0.3, 0.45, 0.6].map((part) => {
          const { x, y } = wire.getPointAtLength(wire.getTotalLength() * part)
          return { x: a * x + e, y: d * y + f }
        })
      })
      .filter(({ x, y }) => document.elementFromPoint(x, y)?.closest('.map-canvas')),
  )
  for (const { x, y } of points) {
    await at.page.mouse.click(x, y, { button: 'right' })
    await at.page.getByRole('menu').waitFor()
    if ((await at.page.getByRole('menuitem').count()) > 4) return
    await at.page.keyboard.press('Escape')
  }
}

describe('upright', () => {
  beforeAll(() => open(PHONE))
  afterAll(() => at?.close())

  test('nothing on a phone lies off its side, the card of a circuit neither', async () => {
    const { page } = at
    const width = () => page.evaluate(() => document.documentElement.scrollWidth)
    expect([await width(), (await box('#map')).width]).toEqual([PHONE.width, PHONE.width])
    expect([await cutOff('.top-bar'), await cutOff('#map')]).toEqual([[], []])
    await page.locator('.circuits button').first().tap()
    await page.locator('.margins').first().waitFor()
    expect(await width()).toBe(PHONE.width)
    await button('← The whole plan').tap()
  })

  test('a phone shows more map than anything else, with the tools at the thumb', async () => {
    const { page } = at
    expect((await box('.map-canvas')).height).toBeGreaterThan(280)
    const tools = await page.locator('.tools button, .history button').all()
    for (const tool of tools)
      expect((await tool.boundingBox())!.y).toBeGreaterThan(PHONE.height * (1 - THUMB))

    // The sheet has three heights, by its buttons and by keys.
    const heights = async () => Math.round((await box('.panel')).height)
    const middle = await heights()
    await button('Panel higher').tap()
    expect(await heights()).toBeGreaterThan(middle + 100)
    await page.locator('.grip').focus()
    await page.keyboard.press('Home')
    expect(await heights()).toBeLessThan(middle - 60)
    await page.keyboard.press('ArrowUp')
    expect(await heights()).toBe(middle)

    const field = page.locator('.title')
    expect(
      await field.evaluate((input) => Number.parseFloat(getComputedStyle(input).fontSize)),
    ).toBeGreaterThanOrEqual(16)
    expect(at.faults).toEqual([])
  })

  test('papers on a phone lie one sheet wide, with an index, and can always be closed', async () => {
    const { page } = at
    await button('Papers').tap()
    await papersMade(page)
    const sheet = await box('.sheet')
    expect(sheet.width).toBeLessThanOrEqual(PHONE.width)
    expect(sheet.width).toBeGreaterThan(PHONE.width * 0.9)
    expect(await page.locator('.sheets').evaluate((sheets) => sheets.scrollWidth - sheets.clientWidth)).toBe(
      0,
    )
    await page.getByLabel('Go to a sheet').selectOption('4')
    await expect.poll(async () => (await page.locator('.sheet').nth(4).boundingBox())!.y).toBeLessThan(150)
    expect(await cutOff('.papers-acts')).toEqual([])
    await button('Close').tap()
    await expect.poll(() => page.locator('.papers').count()).toBe(0)
  })

  test('on a phone the strip says what can be done with what is selected, and every menu shows its last entry', async () => {
    const { page } = at
    const { x, y, width, height } = await box('.station')
    await page.touchscreen.tap(x + width / 2, y + height / 2)
    await page.locator('.map-hint').getByRole('button', { name: 'Delete' }).waitFor()
    expect(await cutOff('.map-hint')).toEqual([])
    await page.locator('.map-hint').getByRole('button', { name: 'Let go' }).tap()
    await button('Line').tap()
    expect(await cutOff('.map-hint')).toEqual([])
    await page.touchscreen.tap(x + width / 2, y + height / 2)
    await page.touchscreen.tap(180, 300)
    expect(await cutOff('.map-hint')).toEqual([])

    await page.reload()
    await toolsAreThere(page)
    await menuOfLeg()
    expect(await page.getByRole('menuitem').last().textContent()).toBe('Delete the line')
    expect(await cutOff('.map-menu')).toEqual([])
    expect(await page.getByRole('menu').evaluate((menu) => menu.scrollHeight - menu.clientHeight)).toBe(0)
  })
})

test('a phone on its side leaves the map its height, and cuts no tool off', async () => {
  await open(ON_ITS_SIDE)
  expect((await box('.map-canvas')).height).toBeGreaterThan(300)
  expect(await cutOff('.top-bar')).toEqual([])
  expect(await cutOff('#map')).toEqual([])
  expect(await at.page.evaluate(() => document.documentElement.scrollWidth)).toBe(ON_ITS_SIDE.width)
  await at.close()
})
