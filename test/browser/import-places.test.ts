import { readFileSync } from 'node:fs'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { formatGpx, formatKmz, formatPlacesCsv } from '../../src/files/places/write-places'
import type { Places } from '../../src/plan/places'
import { todays } from '../cases'
import { type Visit, visit } from './visit'

let at: Visit
beforeAll(async () => {
  at = await visit()
  await at.page.locator('.circuits button').first().waitFor()
})
afterAll(() => at?.close())

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true })

async function open(name: string, content: string | Uint8Array) {
  const { page } = at
  await button(page, 'Plans').click()
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    button(page, 'Open a file…').click(),
  ])
  await chooser.setFiles({ name, mimeType: '', buffer: Buffer.from(content) })
}

const PLACES: Places = {
  points: [
    { name: 'Ford', note: 'by the oak', layer: '', position: [9.9, 47.1] },
    { name: '<img src=x onerror=alert(1)>', note: '', layer: '', position: [9.92, 47.1] },
  ],
  paths: [
    {
      name: 'Track',
      note: '',
      layer: '',
      positions: [
        [9.9, 47.1],
        [9.91, 47.11],
        [9.9201, 47.1],
      ],
    },
    {
      name: 'Beck',
      note: '',
      layer: '',
      positions: [
        [9.89, 47.09],
        [9.93, 47.12],
      ],
    },
  ],
}

const WALKS = [
  ['walk.gpx', () => formatGpx(PLACES, 'Walk')],
  ['walk.kmz', () => formatKmz(PLACES, 'Walk')],
  ['walk.csv', () => formatPlacesCsv(PLACES)],
] as const
test.each(todays(WALKS, 3))(
  '%s: shown on the map before anything is taken, then a plan of its own',
  async (name, make) => {
    const { page } = at
    await button(page, 'Plans').click()
    await button(page, 'Demo plan').click()
    const before = 'Ravel Moor survey camp'
    await expect.poll(() => page.getByLabel('Title of the plan').inputValue()).toBe(before)
    await open(name, await make())
    const dialog = page.locator('.carry')
    await dialog.getByText(/Would be added: 4 stations, 2 lines/).waitFor()
    // What would come stands on the map and in every figure, and goes again.
    const inPlan = () => page.getByText(/^All \d+ of them/).textContent()
    const shown = await inPlan()
    await button(page, 'Add nothing').click()
    await expect.poll(inPlan).not.toBe(shown)
    expect(await page.getByLabel('Title of the plan').inputValue()).toBe(before)

    await open(name, await make())
    await button(page, 'Open as a plan of its own').click()
    await expect.poll(() => page.getByLabel('Title of the plan').inputValue()).toBe('walk')
    // A script in a name is a name.
    await page.locator('#map').getByText('<img src=x onerror=alert(1)>').waitFor()
    expect(at.faults).toEqual([])
  },
)

test('folders are asked about one by one; what is in the way is no wire', async () => {
  const { page } = at
  const kml = `<kml xmlns="http://www.opengis.net/kml/2.2"><Document>
    <Folder><name>Huts</name><Placemark><name>Hut</name><Point><coordinates>9.9,47.2</coordinates></Point></Placemark></Folder>
    <Folder><name>Roads</name><Placemark><name>B 7</name><LineString><coordinates>9.9,47.21 9.92,47.21</coordinates></LineString></Placemark></Folder>
  </Document></kml>`
  await open('country.kml', kml)
  await page.getByLabel('1 line: B 7').selectOption('road')
  await page.locator('.carry').getByText('Would be added: 1 station, 0 lines, 1 hazard.').waitFor()
  await button(page, 'Add to this plan').click()
  await page.locator('#map').getByText('Hut', { exact: true }).waitFor()
  expect(at.faults).toEqual([])
})

test('stations and lines are saved for other programs', async () => {
  const { page } = at
  await button(page, 'Plans').click()
  await page.getByText('Save for other programs').click()
  const [download] = await Promise.all([page.waitForEvent('download'), button(page, 'GPX').click()])
  expect(download.suggestedFilename()).toMatch(/\.gpx$/)
  expect(readFileSync(await download.path(), 'utf8')).toContain('<name>Hut</name>')
})
