import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, inject, test } from 'vitest'
import { isTurn, todays } from '../cases'
import { writtenPmtiles } from '../files/maps/written-pmtiles'
import { complaintsOf } from './axe'
import { toolsAreThere, type Visit, visit } from './visit'

const FIXTURES = 'test/files/maps/fixtures/'
let at: Visit
beforeAll(async () => {
  at = await visit()
  await toolsAreThere(at.page)
})
afterAll(() => at?.close())

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true })
const fixture = (name: string) => readFileSync(FIXTURES + name)

async function open(name: string, content: Uint8Array = fixture(name)) {
  const { page } = at
  if (!(await page.locator('.map-list, .carry').first().isVisible())) await button(page, 'Maps').click()
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), button(page, 'Open a map…').click()])
  await chooser.setFiles({ name, mimeType: '', buffer: Buffer.from(content) })
}

/** The colour at a dot of the topmost map that has one over a place of the screen; undefined where no map has. */
const colourOf = (page: Page, x: number, y: number) =>
  page.evaluate(
    ([x, y]) => {
      const layers = [...document.querySelectorAll<HTMLElement>('.leaflet-layer.back-map')]
      layers.sort((a, b) => Number(b.style.zIndex) - Number(a.style.zIndex))
      for (const canvas of layers.flatMap((layer) => [...layer.querySelectorAll('canvas')])) {
        const box = canvas.getBoundingClientRect()
        if (x! < box.left || x! >= box.right || y! < box.top || y! >= box.bottom) continue
        const copy = document.createElement('canvas')
        copy.width = copy.height = canvas.width
        const brush = copy.getContext('2d')!
        brush.drawImage(canvas, 0, 0)
        const scale = canvas.width / box.width
        const dot = [...brush.getImageData((x! - box.left) * scale, (y! - box.top) * scale, 1, 1).data]
        if (dot[3]! > 0) return dot
      }
      return undefined
    },
    [x, y],
  )

const drawn = (page: Page) =>
  expect
    .poll(async () => {
      const box = (await page.locator('#map').boundingBox())!
      return (await colourOf(page, box.x + box.width * 0.4, box.y + box.height * 0.5))?.[3]
    })
    .toBe(255)

test.each(['relief.mbtiles', 'relief.tif', 'relief.pmtiles'])('%s is seen beneath the net', async (name) => {
  const { page } = at
  const jpeg = fixture('scan.jpg')
  await (name === 'relief.pmtiles'
    ? open(
        name,
        writtenPmtiles({
          tiles: [{ zoom: 0, column: 0, row: 0, bytes: jpeg }],
          type: 2,
          metadata: { name: 'One tile for all' },
        }),
      )
    : open(name))
  await page.locator('.map-list li').first().waitFor()
  await drawn(page)
  await button(page, /^Remove /)
    .first()
    .click()
  await expect.poll(() => page.locator('.map-list li').count()).toBe(0)
  expect(at.faults).toEqual([])
})

test('vector tiles are painted: the lake is blue, and the land around it is not', async () => {
  const { page } = at
  await open('land.mbtiles')
  await page.locator('.map-list li', { hasText: 'Land of the moor' }).waitFor()
  // Where the demo has its station Weir there is the lake.
  const weir = async () => {
    const name = page.locator('#map').getByText('Weir', { exact: true }).first()
    const box = (await name.boundingBox())!
    return colourOf(page, box.x + box.width / 2, box.y - 20)
  }
  await expect.poll(async () => (await weir())?.slice(0, 3)).toEqual([185, 211, 227])
  expect(at.faults).toEqual([])
})

test.skipIf(!isTurn(0, 2))('what is kept is there after a reload, in its order and as strong', async () => {
  const { page } = at
  await open('relief.mbtiles')
  await page.locator('.map-list li', { hasText: 'Relief of the moor' }).waitFor()
  for (const name of ['Land', 'Relief']) await button(page, new RegExp(`^Keep .?${name}`)).click()
  await button(page, /Relief.* lower/).click()
  await page.getByLabel(/How strong .?Relief/).fill('0.4')
  await expect.poll(() => page.getByText('Kept in this browser').count()).toBe(2)
  await page.reload()
  await toolsAreThere(page)
  await drawn(page)
  await button(page, 'Maps').click()
  const rows = page.locator('.map-list li')
  await expect.poll(() => rows.count()).toBe(2)
  expect(await rows.nth(0).textContent()).toContain('Land of the moor')
  expect(await page.getByLabel(/How strong .?Relief/).inputValue()).toBe('0.4')

  // Of an archive only the part around the plan, after it has said how large that is.
  await rows.nth(1).getByText('Only the part around the plan').click()
  await rows.nth(1).getByRole('button', { name: 'How large is it?' }).click()
  await rows
    .nth(1)
    .getByText(/\d+ tiles, \d/)
    .waitFor()
  await rows
    .nth(1)
    .getByRole('button', { name: /^Keep this part/ })
    .click()
  await expect.poll(() => rows.count()).toBe(3)
  await expect.poll(() => rows.nth(0).textContent()).toMatch(/Relief of the moor.*Kept in this browser/s)
  expect(await complaintsOf(page)).toEqual([])
})

test('a scan is laid by marks, typed, at a station or pointed out; each says what it misses', async () => {
  const { page } = at
  await open('scan.jpg')
  const dialog = page.locator('.carry.beside')
  await dialog.locator('.fit-view canvas').waitFor()
  await expect
    .poll(() => dialog.locator('.fit-view canvas').evaluate((canvas) => canvas.clientHeight))
    .toBeGreaterThan(100)
  // Corners of the demo's ground, of which the scan is a picture: public/demo.terrain.tif by gdalinfo.
  const corners = [
    [0.001, 0.001, '48.647873 66.958898'],
    [0.999, 0.001, '48.647873 67.085940'],
    [0.999, 0.999, '48.578628 67.085940'],
    [0.001, 0.999, '48.578628 66.958898'],
  ] as const
  for (const [u, v, place] of corners) {
    const canvas = dialog.locator('.fit-view canvas')
    const box = (await canvas.boundingBox())!
    await canvas.click({ position: { x: u * box.width, y: v * box.height }, force: true })
    await dialog.getByLabel('Latitude and longitude, grid reference or UTM').fill(place)
    await page.keyboard.press('Tab')
  }
  await dialog.getByText(/The marks miss their places by/).waitFor()
  // A mark more, pointed out on the map far from where it belongs: it is the worst, by much.
  await dialog.getByRole('button', { name: 'Mark in the middle' }).click()
  await dialog.getByRole('button', { name: 'Point it out on the map' }).click()
  const map = (await page.locator('#map').boundingBox())!
  await page.mouse.click(map.x + 60, map.y + map.height / 2)
  const rows = dialog.locator('.fit-marks tbody tr')
  await expect.poll(() => rows.count()).toBe(5)
  await expect.poll(() => dialog.locator('.fit-marks tr.worst').textContent()).toMatch(/^5/)
  expect(await complaintsOf(page)).toEqual([])
  await dialog.getByRole('button', { name: 'Remove mark 5' }).click()
  await dialog.getByRole('button', { name: 'Lay it there' }).click()
  await page.locator('.map-list li', { hasText: 'scan.jpg' }).waitFor()
  await drawn(page)
})

/** What is no map, by its kind: of each kind one a day. */
const HOSTILE: readonly (readonly (readonly [name: string, content: () => Uint8Array])[])[] = [
  [
    ['words.mbtiles', () => Buffer.from('no database')],
    ['cut.mbtiles', () => fixture('relief.mbtiles').subarray(0, 9000)],
  ],
  [
    ['words.pmtiles', () => Buffer.from('PMTiles\x03 and then words')],
    ['zeros.pmtiles', () => Buffer.alloc(2e6)],
  ],
  [
    ['cut.tif', () => fixture('relief.tif').subarray(0, 700)],
    ['heights.tif', () => readFileSync('test/terrain/fixtures/hills.tif')],
  ],
]

test('each hostile map ends in a sentence, and the page stays as it was', async () => {
  const { page } = at
  const png = (width: number, height: number) => {
    const head = Buffer.from('89504e470d0a1a0a0000000d49484452000000000000000008020000000000000000', 'hex')
    head.writeUInt32BE(width, 16)
    head.writeUInt32BE(height, 20)
    return head
  }
  for (const [name, content] of HOSTILE.flatMap((kind) => todays(kind, 2))) {
    await open(name, content())
    const refusal = page.locator('dialog.problems')
    await refusal.waitFor()
    expect((await refusal.textContent())!.length).toBeGreaterThan(30)
    await page.keyboard.press('Escape')
    await refusal.waitFor({ state: 'detached' })
  }
  await open('huge.png', png(60_000, 60_000))
  await page
    .locator('.carry.beside')
    .getByText(/3600 million dots/)
    .waitFor()
  await button(page, 'Cancel').click()
  expect(at.faults).toEqual([])
})

/** Waits for what the page asks a server for so many times a second, on a clock that is put on. */
const hurried = (page: Page, wanted: Locator) =>
  expect
    .poll(async () => {
      await page.clock.fastForward(250)
      return wanted.isVisible()
    })
    .toBe(true)

test.skipIf(!isTurn(1, 2))(
  'of a map from the network the part around the plan is kept only when its terms are said to allow it',
  async () => {
    const { page, context, url } = at
    const asked: string[] = []
    await context.route('https://tiles.example/**', async (route) => {
      asked.push(route.request().url())
      await route.fulfill({
        body: fixture('scan.jpg'),
        contentType: 'image/jpeg',
        headers: { 'access-control-allow-origin': '*' },
      })
    })
    const tiles = { url: 'https://tiles.example/{z}/{x}/{y}.jpg', credit: '© Moor survey' }
    await page.evaluate((kept) => sessionStorage.setItem('fieldpair-tiles', kept), JSON.stringify(tiles))
    await page.goto(`${url}online.html`)
    await toolsAreThere(page)
    await page.clock.install()
    await page.locator('.map-foot button', { hasText: 'Maps: online' }).click()
    const online = page.locator('details', { hasText: 'Map from the network: on' })
    await page.getByText('Map from the network: on').click()
    const part = online.getByText('Only the part around the plan')
    const allowed = online.getByLabel('The terms of this source allow keeping its tiles')
    await allowed.waitFor()
    expect([await part.count(), await allowed.isChecked()]).toEqual([0, false])
    await allowed.check()
    await part.click()
    await online.getByRole('button', { name: 'How large is it?' }).click()
    const nearness = online.getByLabel('As near as')
    await hurried(page, nearness)
    await nearness.selectOption('zoom 11')
    await page.getByText(/\d+ tiles?, about [\d.]+ [KM]B\. At 4 a second/).waitFor()
    asked.length = 0
    await page.getByRole('button', { name: /^Keep this part of © Moor survey/ }).click()
    const row = page.locator('.map-list li', { hasText: '© Moor survey' })
    await hurried(page, row.getByText('Kept in this browser'))
    expect(asked.length).toBeGreaterThan(0)
    at.faults.length = 0
    await context.unroute('https://tiles.example/**')
    await page.goto(url)
    await toolsAreThere(page)
    await drawn(page)
    await page.locator('.credit', { hasText: '© Moor survey' }).waitFor()
    expect(at.faults).toEqual([])
  },
)

test('the one file shows maps from a disk', async () => {
  const { page } = at
  await page.goto(pathToFileURL(join(inject('site'), 'Fieldpair.html')).href)
  await toolsAreThere(page)
  await open('relief.mbtiles')
  await page.locator('.map-list li').first().waitFor()
  await drawn(page)
})
