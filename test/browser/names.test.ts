import { readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { isTurn } from '../cases'
import { papersMade, type Visit, visit } from './visit'

const ARABIC = 'برج الماء 14'
const OVERRIDE = 'Ford \u202e9.36'
/** Explicit overrides and embeddings of UAX 9: none may reach the page, where it would turn what follows. */
const TURNING = /.{0,30}[\u202a-\u202e].{0,30}/g

let at: Visit
beforeAll(async () => {
  at = await visit()
})
afterAll(() => at?.close())

/** Opens the demo with the first stations called otherwise. */
async function openWithNames(...names: readonly string[]) {
  const file = JSON.parse(readFileSync('public/demo.plan.geojson', 'utf8'))
  const stations = file.features.filter(
    (feature: { properties: { kind: string } }) => feature.properties.kind === 'station',
  )
  for (const [i, name] of names.entries()) stations[i].properties.name = name
  const path = join(tmpdir(), `names-${process.pid}.plan.geojson`)
  writeFileSync(path, JSON.stringify(file))
  await at.page.locator('.circuits button').first().waitFor()
  await at.page.getByRole('button', { name: 'Plans', exact: true }).click()
  const [chooser] = await Promise.all([
    at.page.waitForEvent('filechooser'),
    at.page.getByRole('button', { name: 'Open a file…' }).click(),
  ])
  await chooser.setFiles(path)
}

test.skipIf(!isTurn(0, 2))(
  'names from right to left, and overrides, turn nothing on screen or paper',
  async () => {
    await openWithNames(ARABIC, OVERRIDE)
    const { page } = at
    await page.locator('.station-name', { hasText: 'برج' }).waitFor()
    const text = () => page.evaluate(() => document.body.textContent ?? '')
    await page.getByRole('button', { name: 'Papers', exact: true }).click()
    await papersMade(page)
    expect((await text()).match(TURNING) ?? []).toEqual([])
    // Within other text it stands between FSI and PDI, every time.
    const inSheets = (await page.locator('.sheets').textContent()) ?? ''
    expect(inSheets).toContain(ARABIC)
    for (const part of inSheets.split(ARABIC).slice(0, -1)) expect(part.endsWith('\u2068')).toBe(true)
    await page.getByRole('button', { name: 'Close', exact: true }).click()
    expect(at.faults).toEqual([])
  },
)

test.skipIf(!isTurn(1, 2))('a name of 10,000 letters is cut on paper, and no sheet grows wider', async () => {
  await openWithNames('W'.repeat(10_000))
  const { page } = at
  await page.locator('.station-name', { hasText: 'WWW' }).waitFor()
  await page.getByRole('button', { name: 'Papers', exact: true }).click()
  await papersMade(page)
  const wide = await page.locator('.sheets').evaluate((sheets) => sheets.scrollWidth - sheets.clientWidth)
  expect(wide).toBe(0)
})
