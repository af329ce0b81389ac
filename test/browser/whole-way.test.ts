import { execFileSync } from 'node:child_process'
import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { kept, papersMade, type Visit, visit } from './visit'

let at: Visit

beforeAll(async () => {
  at = await visit()
})
afterAll(() => at?.close())

const button = (name: string | RegExp) =>
  at.page.getByRole('button', { name, exact: typeof name === 'string' })
const field = (label: string) => at.page.getByLabel(label, { exact: true })
const click = (x: number, y: number) => at.page.locator('#map').click({ position: { x, y } })

/** The figure of a row in the panel, as `Alder → Birch`. */
async function figureOf(row: string): Promise<number> {
  const text = await at.page.locator('.margins li', { hasText: row }).locator('strong').first().textContent()
  return Number.parseFloat(text ?? '')
}

/** A crank set at both ends, so that there is something to ring. */
async function nameAndEquip(x: number, y: number, name: string) {
  await click(x, y)
  await field('Name').fill(name)
  await field('Name').press('Enter')
  await at.page
    .locator('.panel .question', { hasText: 'Who answers here?' })
    .getByRole('combobox')
    .selectOption('crank-1600')
}

test('a person draws a net, sees it ring, changes it, and finds it again and on paper', async () => {
  await button('Plans').click()
  await button('New plan').click()

  // Two stations
  await button('Station').click()
  await click(250, 300)
  await click(750, 420)

  // A line with two bends
  await button('Line').click()
  await click(250, 300)
  await click(400, 250)
  await click(600, 480)
  await click(750, 420)
  await button('Select').click()
  await nameAndEquip(250, 300, 'Alder')
  await nameAndEquip(750, 420, 'Birch')

  // Does it ring?
  await button('← The whole plan').click()
  await at.page.locator('.circuits button').first().click()
  const drawn = await figureOf('Alder → Birch')
  expect(drawn).toBeGreaterThan(0)

  // A bend goes away under the hand, and the volts with it
  await at.page.mouse.move(600, 480)
  await at.page.mouse.down()
  await at.page.mouse.move(610, 600, { steps: 4 })
  await at.page.mouse.move(620, 720, { steps: 4 })
  await expect.poll(() => figureOf('Alder → Birch')).toBeLessThan(drawn)
  // A busy machine draws the last of it later.
  let underHand = Number.NaN
  await expect
    .poll(
      async () => {
        const before = underHand
        underHand = await figureOf('Alder → Birch')
        return underHand === before
      },
      { interval: 300 },
    )
    .toBe(true)
  await at.page.mouse.up()
  await expect.poll(() => figureOf('Alder → Birch')).toBe(underHand)

  // Another wire
  await at.page.locator('.panel').getByRole('button', { name: 'Alder – Birch', exact: true }).first().click()
  const loop = () => at.page.locator('.panel').getByText('A meter reads').textContent()
  const fieldWire = await loop()
  await field('Wire').selectOption('copper-22')
  await expect.poll(loop).not.toBe(fieldWire)
  const copper = await loop()

  // Undo, and forth again
  await button('Undo').click()
  await expect.poll(loop).toBe(fieldWire)
  await button('Redo').click()
  await expect.poll(loop).toBe(copper)

  // It is kept
  await kept(at.page, 'copper-22')
  await at.page.reload()
  await at.page.locator('.circuits button').first().click()
  await expect.poll(() => figureOf('Alder → Birch')).toBeGreaterThan(0)
  await at.page.locator('.panel').getByRole('button', { name: 'Alder – Birch', exact: true }).first().click()
  // The ground is read anew; until it is there, the line is measured on the map.
  await expect.poll(loop).toBe(copper)

  // And on paper
  const loopOhms = /reads ([\d,. ]+ (?:Ω|kΩ))/.exec(copper!)![1]!
  await button('Papers').click()
  await papersMade(at.page)
  const pdf = join(mkdtempSync(join(tmpdir(), 'fieldpair-')), 'papers.pdf')
  await at.page.pdf({ path: pdf, preferCSSPageSize: true, printBackground: true })
  const text = execFileSync('pdftotext', ['-layout', pdf, '-'], { encoding: 'utf8' })
  for (const words of ['Alder', 'Birch', loopOhms]) expect(text).toContain(words)

  expect(at.faults).toEqual([])
})
