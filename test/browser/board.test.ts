import { execFileSync } from 'node:child_process'
import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { papersMade, type Visit, visit } from './visit'

let at: Visit
beforeAll(async () => {
  at = await visit()
  await at.page.locator('.zoom-buttons').waitFor()
})
afterAll(() => at?.close())

const PICTURES = process.env.PICTURES
async function pictures(selector: string) {
  for (const [name, size, scheme] of [
    ['dark', [1440, 900], 'dark'],
    ['phone', [390, 844], 'light'],
  ] as const) {
    await at.page.emulateMedia({ colorScheme: scheme })
    await at.page.setViewportSize({ width: size[0], height: size[1] })
    await at.page.waitForTimeout(800)
    await at.page.locator(selector).scrollIntoViewIfNeeded()
    await at.page.locator(selector).evaluate((e) => e.scrollIntoView({ block: 'start' }))
    await at.page.waitForTimeout(500)
    await at.page.screenshot({ path: `${PICTURES}-${name}.png` })
  }
  await at.page.emulateMedia({ colorScheme: 'light' })
  await at.page.setViewportSize({ width: 1440, height: 900 })
}

/** Presses of a pointer since the plan was empty. */
let clicks = 0
const button = (name: string) => at.page.getByRole('button', { name, exact: true })
async function press(name: string) {
  await button(name).click()
  clicks++
}
async function place(x: number, y: number) {
  await at.page.locator('#map').click({ position: { x, y } })
  clicks++
}
const text = async (selector: string) =>
  (await at.page.locator(selector).allTextContents()).join(' ').replace(/\s+/g, ' ')

test('a star of six telephones round a board is built in under twenty clicks, its faint calls are read and mended, its card and directory printed', async () => {
  const { page } = at
  await button('Plans').click()
  await button('New plan').click()
  // Out to where a line is so long that speech through two of them gets faint.
  for (let k = 0; k < 3; k++) await button('Farther').click()

  await press('Station')
  await place(480, 450)
  for (const [x, y] of [
    [400, 400],
    [500, 340],
    [580, 470],
    [470, 560],
    [720, 320],
    [260, 620],
  ] as const)
    await place(x, y)
  await press('← The whole plan')
  await press('Suggest nets for 7 stations')
  await press('Board')
  await press('Draw the star with a board')
  expect(clicks).toBeLessThan(20)

  await page.getByRole('heading', { name: 'Who is on which jack?' }).waitFor()
  await page.locator('.triangle').waitFor()
  expect(await page.locator('.jacks tbody tr').count()).toBe(6)
  expect(await text('.jacks tbody')).toMatch(/^1Station \d+works \d+.V/)
  expect(await page.locator('.triangle tbody td').count()).toBe(21)
  const faint = () => page.locator('.triangle td.fails, .triangle td.thin').count()
  expect(await faint()).toBeGreaterThan(0)
  expect(await text('.panel .card')).toMatch(
    /The faintest call through it is Station \d+ with Station \d+: [\d.]+ dB of loss/,
  )
  if (PICTURES) await page.screenshot({ path: `${PICTURES}-map.png` })
  if (PICTURES) await pictures('.jacks')

  await page.getByRole('heading', { name: 'What would mend just these' }).waitFor()
  await page.getByRole('heading', { name: 'What would mend just these' }).scrollIntoViewIfNeeded()
  await page.locator('.faint-remedies button', { hasText: 'Apply' }).first().click()
  clicks++
  await expect.poll(faint).toBe(0)
  expect(await text('.panel .card')).toContain('Every call through it is loud enough.')
  expect(clicks).toBeLessThan(20)

  await button('Papers').click()
  await papersMade(page)
  const path = join(mkdtempSync(join(tmpdir(), 'fieldpair-')), 'papers.pdf')
  await page.pdf({
    path: PICTURES ? `${PICTURES}.pdf` : path,
    preferCSSPageSize: true,
    printBackground: true,
  })
  const pages = execFileSync('pdftotext', ['-layout', PICTURES ? `${PICTURES}.pdf` : path, '-'], {
    encoding: 'utf8',
  }).split('\f')
  // Beside other cards on one sheet.
  const card = pages.find((page) => page.includes('Board: Station 1'))!
  for (let jack = 1; jack <= 6; jack++) expect(card).toMatch(new RegExp(`\\b${jack} +line ${jack} .*Station`))
  expect(card).toContain('falls')
  const list = pages.filter((page) => /\bDirectory\b/.test(page))
  expect(list).toHaveLength(1)
  for (let station = 1; station <= 7; station++) expect(list[0]).toContain(`Station ${station}`)
  expect(at.faults).toEqual([])
})
