import { afterAll, beforeAll, expect, test } from 'vitest'
import { BUILT_IN } from '../../src/catalog/built-in'
import { isTurn, todays } from '../cases'
import { demoPlan } from '../sheet/demo-source'
import { openAll, papersMade, type Visit, visit } from './visit'

/**
 * Metric signs after a figure, at the end of a column's head, alone beside a field; and metric words. `1 N 2` and `° N` are north, not newtons; `Ω·m` is the unit in which soil is told in the
 * American standards too (IEEE Std 142).
 */
const METRIC =
  /\d\s?(?:m|km|cm|mm|kg|g|°C|km\/h)(?![\w°²])|\d\s?N(?![\w,]|,? ?\d)|\b(?:[Mm]|[Kk]ilom|[Cc]entim|[Mm]illim)etres?\b|\b[Kk]ilograms?\b|\bCelsius\b|\/km\b|°C\b|\b(?:km|kg|cm|mm)\b|[a-z,)] m$/g

/**
 * Everything that a person can read in what is open now, or hear read out: texts, names, hints and what fields hold. Left out is what is
 * quoted (`.source`: a handbook's figure stands as it was printed), and the labels of the UTM grid, which is metric by its definition:
 * the map on paper says so, which a test below holds.
 */
const READ = `(() => {
  const read = []
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_ELEMENT | NodeFilter.SHOW_TEXT)
  for (let node = walk.currentNode; node; node = walk.nextNode()) {
    const element = node instanceof Element ? node : node.parentElement
    if (!element.checkVisibility() || element.closest('.source, .grid-label, .grid-labels, script, style')) continue
    if (node instanceof Text) {
      if (!/\\S/.test(node.data)) continue
      // A sentence may be cut into several nodes: a figure and its unit must meet again.
      const block = element.closest('p, li, td, th, label, figcaption, caption, text, h1, h2, h3, button, dt, dd, summary, span') ?? element
      read.push((element.matches('.unit') ? '1 ' : '') + (block.textContent ?? '').replace(/\\s+/g, ' '))
    } else for (const name of ['aria-label', 'aria-valuetext', 'title', 'placeholder', 'alt']) {
      const text = element.getAttribute(name)
      if (text) read.push(text)
    }
  }
  return [...new Set(read)]
})()`

/**
 * What somebody wrote keeps its own units: the name of a catalog entry, as `Two bare fence wires, galvanised steel 2.5 mm`, and the
 * notes in a plan.
 */
const WRITTEN = [
  ...[...BUILT_IN.wires, ...BUILT_IN.sets, ...BUILT_IN.supplies].map(({ name }) => name),
  ...[...demoPlan().lines.values()].flatMap(({ legs }) => legs.flatMap(({ note }) => note || [])),
]
const GRID = /grid UTM zone \d+(?: north| south)?, metres/g
const withoutWritten = (text: string) =>
  WRITTEN.reduce((left, own) => left.replaceAll(own, '…'), text.replace(GRID, '…'))

let at: Visit
beforeAll(async () => {
  at = await visit()
  await at.page.locator('.circuits button').first().waitFor()
  await at.page.getByRole('button', { name: 'View', exact: true }).click()
  await at.page.getByRole('button', { name: 'US', exact: true }).click()
  await at.page.keyboard.press('Escape')
})
afterAll(() => at?.close())

/** What is metric on the page as it stands, with some words around each. */
async function metricWords(): Promise<readonly string[]> {
  const texts: readonly string[] = await at.page.evaluate(READ)
  expect(texts.length).toBeGreaterThan(20)
  return texts
    .map(withoutWritten)
    .flatMap((text) =>
      [...text.matchAll(METRIC)].map(({ index }) => text.slice(Math.max(0, index - 60), index + 40)),
    )
}

const back = async () => {
  const button = at.page.getByRole('button', { name: '← The whole plan' })
  if (await button.count()) await button.click()
}

test('the sieve catches what is metric, and lets north and minutes pass', () => {
  const caught = (text: string) => [...text.matchAll(METRIC)].map(([found]) => found)
  expect(caught('it hangs 5.5 m up, weighs 3 kg, pulls 756 N at 10 °C, 37 Ω/km')).toHaveLength(5)
  expect(['Run m', 'Mass kg', '1 m', 'Wire from Camp, km'].flatMap(caught)).toHaveLength(4)
  expect(caught('Every metre counts, kilometres more.')).toHaveLength(2)
  expect(caught('12 min, 5 mi, 3 mA, 47.21 N 11.9 E, 52.1° N, 20 kV, 40 ft, 8 V, 6 MB, 5 mH')).toEqual([])
})

test('the whole plan, with all that is shown on demand', async () => {
  await openAll(at.page)
  expect(await metricWords()).toEqual([])
})

/** One each day. */
const CIRCUITS = ['Camp net', 'Kiln ringdown', 'Stores line', 'River net']
test.each(todays(CIRCUITS, 4))('the card of the circuit %s, its studies and its remedies', async (name) => {
  await back()
  await at.page.locator('.circuits button', { hasText: name }).first().click()
  await at.page.getByRole('heading', { name: 'Will it ring?' }).waitFor()
  await openAll(at.page)
  expect(await metricWords()).toEqual([])
})

/** One each day. */
const LINES = ['Camp – Ford', 'Ford – Weir', 'Sheepfold – Cairn']
test('the cards of stations, lines and hazards, and the offers of routes', async () => {
  const { page } = at
  await back()
  const { x, y, width, height } = (await page.locator('.station .block').first().boundingBox())!
  await page.mouse.click(x + width / 2, y + height / 2)
  await page.getByRole('button', { name: '← The whole plan' }).waitFor()
  await openAll(page, '.card')
  expect(await metricWords()).toEqual([])
  for (const line of todays(LINES, 3)) {
    await back()
    await page.getByPlaceholder('Station, line or circuit').fill(line)
    await page.locator('.panel .rows button', { hasText: line }).first().click()
    await page.getByRole('heading', { name: line }).waitFor()
    await page.getByRole('slider', { name: 'Place on the line' }).focus()
    await page.keyboard.press('PageUp')
    await page.getByRole('button', { name: 'Suggest a route' }).click()
    await page.locator('.suggested-way').first().waitFor({ state: 'attached' })
    await openAll(page, '.card')
    expect(await metricWords()).toEqual([])
  }
})

test.skipIf(!isTurn(0, 2))('the offer of other nets', async () => {
  const { page } = at
  await back()
  await page.locator('.circuits button', { hasText: 'River net' }).first().click()
  await openAll(at.page)
  await page.getByRole('button', { name: /^Suggest nets for/ }).click()
  await page.getByRole('columnheader', { name: 'Tree' }).waitFor()
  await openAll(at.page)
  expect(await metricWords()).toEqual([])
})

test('a field that refuses says its bounds in the person’s units', async () => {
  const { page } = at
  await back()
  await openAll(at.page)
  for (const label of ['Tail', 'Temperature of the wire', 'Most for one person']) {
    const field = page.getByLabel(label, { exact: false }).first()
    await field.fill('99999')
    await page.keyboard.press('Tab')
    await page
      .getByText(/must lie between|must be/)
      .first()
      .waitFor()
    expect(await metricWords()).toEqual([])
    await page.keyboard.press('Escape')
  }
})

test('the map: contours, labels, what the pointer is told and the hints of each tool', async () => {
  const { page } = at
  await back()
  await page.locator('.contour-height').first().waitFor({ state: 'attached' })
  expect(await page.locator('.contour-height').first().textContent()).toMatch(/^\d+ ft$/)
  const map = (await page.locator('#map').boundingBox())!
  for (const tool of ['Station', 'Line', 'Hazard', 'Select']) {
    await page.getByRole('button', { name: tool, exact: true }).first().click()
    await page.mouse.move(map.x + map.width / 2, map.y + map.height / 3)
    if (tool === 'Line') {
      await page.mouse.click(map.x + map.width / 2, map.y + map.height / 3)
      await page.mouse.move(map.x + map.width / 2 + 90, map.y + map.height / 3 + 40)
    }
    expect(await metricWords()).toEqual([])
    await page.keyboard.press('Escape')
  }
  await page.mouse.click(map.x + map.width / 2, map.y + map.height / 3, { button: 'right' })
  expect(await metricWords()).toEqual([])
  await page.keyboard.press('Escape')
})

test.each(['Plans', 'View', 'Go to', 'Maps'])('what %s opens', async (name) => {
  const open = at.page.locator('dialog[open], :popover-open')
  await at.page.getByRole('button', { name, exact: true }).click()
  // A dialog is made when it is first wanted.
  await open.first().waitFor()
  const found = await metricWords()
  await at.page.keyboard.press('Escape')
  await expect.poll(() => open.count()).toBe(0)
  expect(found).toEqual([])
})

test.skipIf(!isTurn(1, 2))('every paper, and the grid of its maps says that it is metric', async () => {
  const { page } = at
  await page.getByRole('button', { name: 'Papers', exact: true }).click()
  const boxes = page.locator('.papers input[type="checkbox"]')
  for (const box of await boxes.all()) await box.check()
  // Each newly chosen paper has all made again: only when they lie there is there anything to read.
  await papersMade(page)
  expect(await page.locator('.strip-profile').count()).toBeGreaterThan(0)
  expect(await metricWords()).toEqual([])
  expect(await page.locator('.grid-label text').count()).toBeGreaterThan(0)
  expect(await page.locator('.sheets').textContent()).toMatch(GRID)
})

test('in metric units the same sieve catches much', async () => {
  const { page } = at
  await page.keyboard.press('Escape')
  await page.getByRole('button', { name: 'View', exact: true }).click()
  await page.getByRole('button', { name: 'Metric', exact: true }).click()
  await page.keyboard.press('Escape')
  await back()
  await openAll(at.page)
  expect((await metricWords()).length).toBeGreaterThan(20)
})
