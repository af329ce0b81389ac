import type { CDPSession } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { toolsAreThere, type Visit, visit } from './visit'

let at: Visit
/** One for all touches: the browser remembers by session which fingers are down. */
let hand: CDPSession

beforeAll(async () => {
  at = await visit({ viewport: { width: 390, height: 844 }, touch: true })
  hand = await at.context.newCDPSession(at.page)
})
afterAll(() => at?.close())

const button = (name: string) => at.page.getByRole('button', { name, exact: true })

/** The middle of a station's block on the screen. */
async function stationAt(index: number): Promise<{ x: number; y: number }> {
  const box = await at.page.locator('.station .block').nth(index).boundingBox()
  return { x: box!.x + box!.width / 2, y: box!.y + box!.height / 2 }
}

type Finger = { readonly x: number; readonly y: number }

const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', fingers: readonly Finger[]) =>
  hand.send('Input.dispatchTouchEvent', { type, touchPoints: [...fingers] })

test('a finger that rests on a station opens its menu', async () => {
  await toolsAreThere(at.page)
  await touch('touchStart', [await stationAt(0)])
  await at.page.getByRole('menuitem', { name: 'Delete' }).waitFor()
  await touch('touchEnd', [])
  // The finger lifts where the menu came up: it chooses nothing by that.
  await at.page.waitForTimeout(100)
  expect(await at.page.getByRole('menuitem').count()).toBeGreaterThan(0)
  await at.page.keyboard.press('Escape')
  await expect.poll(() => at.page.getByRole('menu').count()).toBe(0)
})

test('a finger that rests on open ground and lifts places nothing by itself', async () => {
  const stations = await at.page.locator('.station').count()
  const ground = { x: 350, y: 150 }
  await touch('touchStart', [ground])
  const place = at.page.getByRole('menuitem', { name: 'Station here' })
  await place.waitFor()
  await touch('touchEnd', [])
  await at.page.waitForTimeout(100)
  expect(await at.page.locator('.station').count()).toBe(stations)
  await place.tap()
  await expect.poll(() => at.page.locator('.station').count()).toBe(stations + 1)
  await button('Undo').tap()
})

test('two fingers bring the map nearer and move no station', async () => {
  const [before, after] = [await stationAt(0), await stationAt(4)]
  const spread = Math.hypot(after.x - before.x, after.y - before.y)
  await touch('touchStart', [
    { x: 150, y: 220 },
    { x: 230, y: 300 },
  ])
  for (let step = 1; step <= 5; step++) {
    await touch('touchMove', [
      { x: 150 - 8 * step, y: 220 - 8 * step },
      { x: 230 + 8 * step, y: 300 + 8 * step },
    ])
  }
  await touch('touchEnd', [])
  await expect
    .poll(async () => {
      const [a, b] = [await stationAt(0), await stationAt(4)]
      return Math.hypot(b.x - a.x, b.y - a.y)
    })
    .toBeGreaterThan(spread * 1.3)
  expect(await button('Undo').isDisabled()).toBe(true)
})

test('a tile server is asked only after the person has turned it on', async () => {
  const asked: string[] = []
  at.page.on('request', (request) => {
    if (!request.url().startsWith(at.url) && request.url().startsWith('http')) asked.push(request.url())
  })
  await button('Maps').tap()
  await at.page.getByText('Map from the network: off').tap()
  await at.page.getByLabel('Tile address').fill('https://tiles.example/{z}/{x}/{y}.png')
  await at.page.getByLabel('Credit that its owner asks for').fill('Tiles by nobody')
  expect(asked).toEqual([])
  await button('Turn on').tap()
  await expect.poll(() => asked.length).toBeGreaterThan(0)
  expect(asked.every((url) => /^https:\/\/tiles\.example\/\d+\/\d+\/\d+\.png$/.test(url))).toBe(true)
  expect(await at.page.locator('.credit').textContent()).toContain('Tiles by nobody')

  await button('Maps: online').tap()
  await at.page.getByText('Map from the network: on').tap()
  await button('Turn off').tap()
  await at.page.locator('.station').first().waitFor()
  const until = asked.length
  // Nearer by, other tiles would be wanted; what the map draws there comes after them.
  const [before, spread] = [await stationAt(0), await stationAt(4)]
  await button('Nearer').tap()
  await expect.poll(() => stationAt(4)).not.toEqual(spread)
  await expect.poll(() => stationAt(0)).not.toEqual(before)
  expect(asked.length).toBe(until)
})
