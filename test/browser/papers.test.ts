import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { todays } from '../cases'
import { demoReport } from '../command/demo-report'
import { demoPlan } from '../sheet/demo-source'
import { papersMade, type Visit, visit } from './visit'

let at: Visit

beforeAll(async () => {
  at = await visit()
  await at.page.getByRole('button', { name: 'Papers', exact: true }).click()
  await at.page.getByRole('button', { name: 'All papers', exact: true }).click()
  // The demo's ground comes after its plan, and lengthens the lines.
  await at.page.locator('.strip-profile').first().waitFor({ state: 'attached' })
})
afterAll(() => at?.close())

/** Chooses a size, and waits for the papers of that size. */
async function lay(size: string) {
  await at.page.getByLabel('Sheet size').selectOption(size)
  await papersMade(at.page)
}

const plan = demoPlan()
/** What the command line says of the same plan on the same ground: the papers may say nothing else. */
const report = await demoReport('--terrain', 'public/demo.terrain.tif')
const oneLine = (text: string) => text.replace(/\s+/g, ' ')

/** The papers printed, and read back by Poppler. */
async function printed(size: string) {
  await lay(size)
  const path = join(mkdtempSync(join(tmpdir(), 'fieldpair-')), 'papers.pdf')
  await at.page.pdf({ path, preferCSSPageSize: true, printBackground: true })
  const info = execFileSync('pdfinfo', [path], { encoding: 'utf8' })
  const text = execFileSync('pdftotext', ['-layout', path, '-'], { encoding: 'utf8' })
  // Cell by cell, in the order in which they were drawn: a sentence of several lines beside others stays whole.
  const cells = oneLine(execFileSync('pdftotext', ['-raw', path, '-'], { encoding: 'utf8' }))
  // A form feed ends each page.
  return { info, cells, pages: text.split('\f').slice(0, -1).map(oneLine) }
}

const SIZES = [
  ['A4', /Page size:\s+59\d(\.\d+)? x 84\d/],
  ['Letter', /Page size:\s+612 x 792/],
] as const
describe.each(todays(SIZES, 2))('the demo on %s', (size, pageSize) => {
  test('prints each sheet on one page, and all that a crew needs can be read from it', async () => {
    const { info, cells, pages } = await printed(size)
    const all = pages.join(' ')
    expect(info).toMatch(pageSize)
    expect(pages).toHaveLength(await at.page.locator('.sheet').count())
    // Cards and labels are drawn to the edges of their sheets, and have no head.
    const headed = pages.filter((text) =>
      /sheet \d+ of \d+.*Datum WGS 84|Datum WGS 84.*sheet \d+ of \d+/.test(text),
    )
    expect(headed).toHaveLength(await at.page.locator('.sheet:not(.bare)').count())

    for (const station of plan.stations.values()) expect(all).toContain(station.name)
    for (const { name, loopOhms, wireM } of report.lines) {
      expect(all).toContain(name)
      expect(all).toContain(loopOhms.toFixed(1))
      expect(all).toContain(wireM.toFixed(0))
    }
    for (const { text } of report.cautions) expect(cells).toContain(oneLine(text))
    for (const circuit of report.circuits) {
      expect(all).toContain(circuit.name)
      for (const { volts } of circuit.ringing) expect(all).toContain(volts.toFixed(1))
    }
  })

  test('leaves nothing hanging over the edge of a sheet', async () => {
    await lay(size)
    const over = await at.page.locator('.sheet').evaluateAll((sheets) =>
      sheets.flatMap((sheet) => {
        const edge = sheet.getBoundingClientRect()
        return [...sheet.querySelectorAll('table, .drawing, .box, p, footer')]
          .map((part) => part.getBoundingClientRect())
          .filter((part) => part.right > edge.right + 1 || part.bottom > edge.bottom + 1)
          .map((part) => `${part.right - edge.right} ${part.bottom - edge.bottom}`)
      }),
    )
    expect(over).toEqual([])
  })
})

test('a table comes as a file of comma-separated values', async () => {
  await at.page.getByLabel('Save tables').selectOption({ label: 'Lines in the order of laying' })
  const [file] = await Promise.all([
    at.page.waitForEvent('download'),
    at.page.getByRole('button', { name: 'Save CSV', exact: true }).click(),
  ])
  expect(file.suggestedFilename()).toBe('Lines-in-the-order-of-laying.csv')
  const text = readFileSync(await file.path(), 'utf8')
  expect(text).toContain('From – to')
  expect(text.split('\r\n')).toHaveLength(plan.lines.size + 2)
  expect(at.faults).toEqual([])
})
