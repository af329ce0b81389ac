import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { groundIsThere, kept, type Visit, visit } from './visit'

let at: Visit

beforeAll(async () => {
  at = await visit()
})
afterAll(() => at?.close())

const button = (name: string | RegExp) =>
  at.page.getByRole('button', { name, exact: typeof name === 'string' })
const question = (ask: string) => at.page.locator('.panel .question', { hasText: ask })

/** Chooses files in the dialog that a button opens. */
async function choose(name: string, files: string | string[]) {
  const [chooser] = await Promise.all([at.page.waitForEvent('filechooser'), button(name).click()])
  await chooser.setFiles(files)
}

function written(name: string, value: unknown): string {
  const path = join(mkdtempSync(join(tmpdir(), 'fieldpair-')), name)
  writeFileSync(path, typeof value === 'string' ? value : JSON.stringify(value))
  return path
}

/** Two stations 1 km apart on the hills of test/terrain/fixtures/hills.tif: 500100 E and 501100 E, 5150450 N in UTM zone 33. */
const WEST = [15.0013034, 46.5076194]
const EAST = [15.0143376, 46.5076185]
const PLAN = {
  type: 'FeatureCollection',
  plan: { format: 'fieldpair-plan', version: 1, title: 'Over the hills' },
  features: [
    ...[WEST, EAST].map((coordinates, i) => ({
      type: 'Feature',
      id: `s${i}`,
      geometry: { type: 'Point', coordinates },
      properties: { kind: 'station', name: ['Alder', 'Birch'][i] },
    })),
    {
      type: 'Feature',
      id: 'l1',
      geometry: { type: 'LineString', coordinates: [WEST, EAST] },
      properties: { kind: 'line', from: 's0', to: 's1', wire: 'wd-1a', legs: [{ lay: 'surface' }] },
    },
  ],
}
/** A road across the way between them, in a file as a map office might give it. */
const ROADS = {
  type: 'FeatureCollection',
  features: [
    {
      type: 'Feature',
      properties: { class: 'secondary', name: 'Saddle road' },
      geometry: { type: 'LineString', coordinates: [[15.00782, 46.50447], [15.00782, 46.51077]] }, // biome-ignore format: one line
    },
    {
      type: 'Feature',
      properties: { class: 'hedge' },
      geometry: { type: 'LineString', coordinates: [[15.002, 46.50447], [15.002, 46.51077]] }, // biome-ignore format: one line
    },
  ],
}

const lengthWords = () => at.page.locator('.panel').getByText('of wire for').textContent()
/** The line's length along the ground or the map as its card tells it, m. */
async function lengthM(): Promise<number> {
  const [, figure, unit] = /wire for ([\d.]+) (k?m)/.exec((await lengthWords()) ?? '')!
  return Number(figure) * (unit === 'km' ? 1000 : 1)
}
const openLine = () => at.page.locator('#map').click({ position: { x: 520, y: 450 } })

test('the demo opens with its ground, a profile and cautions at their places', async () => {
  await groundIsThere(at.page)
  await expect.poll(() => question('Do we know the ground?').textContent()).toContain('Yes')
  await at.page.locator('.caution-marks path').first().waitFor({ state: 'attached' })
  await button(/^Show it: .+ – /)
    .first()
    .click()
  await at.page.locator('.profile .ground').waitFor({ state: 'attached' })
  await at.page.locator('.line-cursor:not(.hidden)').waitFor({ state: 'attached' })
})

test('a raster that is none is refused in a sentence, and the ground stays', async () => {
  await button('← The whole plan').click()
  await choose('Open elevations…', written('torn.tif', 'II*\0 and then nothing more'))
  const dialog = at.page.getByRole('dialog', { name: 'torn.tif was not opened' })
  await expect.poll(() => dialog.textContent()).toMatch(/torn\.tif .+\./)
  await dialog.getByRole('button', { name: 'Close' }).click()
  await expect.poll(() => question('Do we know the ground?').textContent()).toContain('Yes')
})

test('a person opens heights and roads, takes a suggested route, and finds its crossing', async () => {
  await button('Plans').click()
  await choose('Open a file…', written('hills.plan.geojson', PLAN))
  await expect.poll(() => at.page.getByLabel('Title of the plan').inputValue()).toBe('Over the hills')
  await openLine()
  expect(await lengthWords()).toContain('on the map')
  const onMapM = await lengthM()
  expect(Math.abs(onMapM - 1000)).toBeLessThan(6)

  // Over hills it is longer by about 1 %: 500 m + 90 m · sin(c/7) · cos(r/9) + c, over 40 cells of 25 m
  await choose('Open elevations…', 'test/terrain/fixtures/hills.tif')
  await expect.poll(lengthWords).toContain('along the ground')
  expect(await lengthM()).toBeGreaterThan(onMapM * 1.005)
  await at.page.locator('.profile .ground').waitFor({ state: 'attached' })

  // What is pointed at on the profile shows on the map
  const profile = at.page.getByRole('slider', { name: 'Place on the line' })
  await profile.focus()
  await at.page.keyboard.press('PageUp')
  expect(await profile.getAttribute('aria-valuetext')).toMatch(/^1\d\d m out, \d+ m high; leg 1, surface$/)
  await at.page.locator('.line-cursor:not(.hidden)').waitFor({ state: 'attached' })

  // A road, named by hand from a foreign file; the hedge is left out
  await button('← The whole plan').click()
  await choose('Add roads, waters, power lines…', written('roads.geojson', ROADS))
  const dialog = at.page.getByRole('dialog', { name: 'What is in roads.geojson?' })
  expect(await dialog.getByLabel('secondary (1)').inputValue()).toBe('road')
  expect(await dialog.getByLabel('hedge (1)').inputValue()).toBe('')
  await dialog.getByRole('button', { name: 'Add 1 hazard' }).click()
  await expect
    .poll(() => question('What could hurt someone?').textContent())
    .toMatch(/Alder – Birch meets Saddle road/)

  // A route around the hills, under the road
  await openLine()
  await button('Suggest a route').click()
  await at.page.locator('.suggested-way').waitFor({ state: 'attached' })
  await button('Route the line this way').click()
  await expect.poll(() => at.page.locator('.suggested-way').count()).toBe(0)
  const crossings = await at.page.locator('.crossings li').allTextContents()
  expect(crossings).toHaveLength(1)
  expect(crossings[0]).toMatch(/Saddle road.* out, at \d+°, buried/)
  await button('Undo').click()
  await expect.poll(() => at.page.locator('.crossings').textContent()).toContain('surface')
  await button('Redo').click()

  // All of it is kept
  await kept(at.page, '"buried"')
  await at.page.reload()
  await expect.poll(() => question('Do we know the ground?').textContent()).toContain('Yes')
  await question('Do we know the ground?').getByText('1 elevation file').click()
  await expect
    .poll(() => question('Do we know the ground?').textContent())
    .toMatch(/hills\.tif cells of 25 m, \d+ KB/)
  await button('Remove hills.tif').click()
  await expect.poll(() => question('Do we know the ground?').textContent()).toContain('No: lengths')

  expect(at.faults).toEqual([])
})

test('heights from the network are asked for only after the person has turned them on', async () => {
  const asked: string[] = []
  /** Level ground at 500 m: red 129, green 244, blue 0 (Tilezen Joerd, docs/formats.md, "Terrarium"). */
  const tile = await at.page.evaluate(() => {
    const canvas = document.createElement('canvas')
    canvas.width = canvas.height = 256
    const context = canvas.getContext('2d')!
    context.fillStyle = 'rgb(129, 244, 0)'
    context.fillRect(0, 0, 256, 256)
    return canvas.toDataURL().split(',')[1]!
  })
  await at.context.route('https://tiles.example/**', (route) => {
    asked.push(route.request().url())
    return route.fulfill({
      body: Buffer.from(tile, 'base64'),
      contentType: 'image/png',
      headers: { 'access-control-allow-origin': '*' },
    })
  })
  const ground = question('Do we know the ground?')
  await ground.getByText('Elevations from the network: off').click()
  await at.page
    .getByLabel('Address of the elevation tiles (PNG, height in its colours)')
    .fill('https://tiles.example/{z}/{x}/{y}.png')
  await at.page.getByLabel('Credit that its owner asks for').fill('nobody')
  expect(asked).toEqual([])
  await button('Turn on').click()
  await expect.poll(() => ground.textContent()).toContain('Yes')
  expect(asked.length).toBeGreaterThan(0)
  await at.page.locator('#map').hover({ position: { x: 520, y: 450 } })
  await expect.poll(() => at.page.locator('.pointer-place').textContent()).toMatch(/ · 500 m high$/)

  await ground.getByText('Elevations from the network: on').click()
  await button('Turn off').click()
  await expect.poll(() => ground.textContent()).toContain('No: lengths')
})
