import type { CDPSession } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { ALL } from '../cases'
import { seeded } from '../terrain/seeded'
import { type Visit, visit } from './visit'

/** How a finger moves over the map of a phone: what it may move, and what it must not. */
let at: Visit
let hand: CDPSession

beforeAll(async () => {
  at = await visit({ viewport: { width: 360, height: 640 }, touch: true })
  hand = await at.context.newCDPSession(at.page)
  await at.page.locator('.circuits button').first().waitFor()
  await at.page.locator('.zoom-buttons').waitFor()
})
afterAll(() => at?.close())

const button = (name: string) => at.page.getByRole('button', { name, exact: true })
const deed = () => at.page.locator('.map-deed').textContent()
const canUndo = async () => !(await button('Undo').isDisabled())

type Finger = { readonly x: number; readonly y: number }
const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', fingers: readonly Finger[]) =>
  hand.send('Input.dispatchTouchEvent', { type, touchPoints: [...fingers] })

const between = (from: Finger, to: Finger, part: number): Finger => ({
  x: from.x + (to.x - from.x) * part,
  y: from.y + (to.y - from.y) * part,
})
async function swipe(from: Finger, to: Finger, steps = 4): Promise<void> {
  await touch('touchStart', [from])
  for (let step = 1; step <= steps; step++) await touch('touchMove', [between(from, to, step / steps)])
  await touch('touchEnd', [])
}
/** A swipe whose finger is lifted while it is quick. */
async function flick(from: Finger, to: Finger): Promise<void> {
  await touch('touchStart', [from])
  await touch('touchMove', [between(from, to, 0.3)])
  await at.page.waitForTimeout(40)
  const moves = []
  for (const part of [0.5, 0.8, 1]) {
    moves.push(touch('touchMove', [between(from, to, part)]))
    await at.page.waitForTimeout(4)
  }
  await Promise.all(moves)
  await touch('touchEnd', [])
}

async function middleOf(selector: string, index = 0): Promise<Finger> {
  const box = (await at.page.locator(selector).nth(index).boundingBox())!
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 }
}

const canvas = async () => (await at.page.locator('.map-canvas').boundingBox())!

const SWIPES = ALL ? 60 : 10
test(`${SWIPES} swipes of one finger, half of them begun on a station or a wire, pan the map and change nothing`, async () => {
  const chance = seeded(60)
  const { x, y, width, height } = await canvas()
  const within = (part: number, from: number, size: number) => from + 12 + part * (size - 24)
  for (let count = 0; count < SWIPES; count++) {
    const anywhere = { x: within(chance(), x, width), y: within(chance(), y, height) }
    const marks = at.page.locator(count % 4 === 0 ? '.station .block' : '.wire')
    const marked = count % 2 === 0 && (await marks.count()) > 0
    const begun = marked
      ? await middleOf(
          count % 4 === 0 ? '.station .block' : '.wire',
          Math.floor(chance() * (await marks.count())),
        )
      : anywhere
    const isOnMap = ({ x, y }: Finger) =>
      at.page.evaluate(([x, y]) => document.elementFromPoint(x!, y!)?.closest('.map-canvas') != null, [x, y])
    const from = (await isOnMap(begun)) ? begun : { x: x + width / 2, y: y + height / 2 }
    const to = { x: within(chance(), x, width), y: within(chance(), y, height) }
    // A stroke that hardly moves is a tap.
    await swipe(from, Math.hypot(to.x - from.x, to.y - from.y) < 30 ? { x: from.x + 60, y: from.y } : to)
    if (count % 10 === 9) await button('See the whole plan').tap()
  }
  expect(await canUndo()).toBe(false)
  expect(at.faults).toEqual([])
})

test('a tap on open ground tells where that is and how high, and places nothing', async () => {
  const { x, y, height } = await canvas()
  await touch('touchStart', [{ x: x + 40, y: y + height / 2 }])
  await touch('touchEnd', [])
  const place = at.page.locator('.pointer-place')
  await place.waitFor({ state: 'visible' })
  await expect.poll(() => place.textContent()).toMatch(/^\d+\.\d{5}° [NS] \d+\.\d{5}° [EW]( · \d+ m high)?$/)
  expect(await canUndo()).toBe(false)
})

test('a finger moves the station that is selected, says how far, and a tap takes it back, also right after a flick', async () => {
  // What an earlier try of this test left is no part of it.
  while (await canUndo()) await button('Undo').tap()
  const station = await middleOf('.station .block', 1)
  await at.page.touchscreen.tap(station.x, station.y)
  await at.page.locator('.station .ring').waitFor()
  // The browser takes some flicks for no more than a drag.
  for (let time = 0; time < 4; time++) {
    const selected = await middleOf('.station .ring')
    await flick(selected, { x: selected.x + 30, y: selected.y + 25 })
    await expect.poll(deed).toMatch(/moved [\d.]+ k?m\.Undo$/)
    await at.page.locator('.map-deed button').tap()
    await expect.poll(canUndo).toBe(false)
  }
})

test('Done ends a line where the finger was last, not in the middle of the map', async () => {
  await button('Plans').tap()
  await button('New plan').tap()
  await button('Line').tap()
  const { x, y } = await canvas()
  const [first, second] = [
    { x: x + 60, y: y + 140 },
    { x: x + 240, y: y + 165 },
  ]
  await at.page.touchscreen.tap(first.x, first.y)
  await at.page.touchscreen.tap(second.x, second.y)
  await button('Done').tap()
  await expect.poll(() => at.page.locator('.station .block').count()).toBe(2)
  for (const [index, place] of [first, second].entries()) {
    const stands = await middleOf('.station .block', index)
    expect(Math.hypot(stands.x - place.x, stands.y - place.y)).toBeLessThan(3)
  }
  expect(at.faults).toEqual([])
})
