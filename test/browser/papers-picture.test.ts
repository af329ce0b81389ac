import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader'
import { carriedOfFragment } from '../../src/files/carry/carried'
import { planFingerprint } from '../../src/files/plan-fingerprint'
import { ALL, todays } from '../cases'
import { demoPlan } from '../sheet/demo-source'
import { papersMade, type Visit, visit } from './visit'

/** A reader takes a second a page: some, spread over all papers. */
const PAGES = ALL ? 100 : 5

let at: Visit

beforeAll(async () => {
  const wasm = readFileSync('node_modules/zxing-wasm/dist/reader/zxing_reader.wasm')
  await prepareZXingModule({
    overrides: { wasmBinary: new Uint8Array(wasm).buffer },
    fireImmediately: true,
  })
  at = await visit()
  await at.page.getByRole('button', { name: 'Papers', exact: true }).click()
})
afterAll(() => at?.close())

/** Pages as they come from the printer, at 300 dots an inch in black and white, and what a reader of its own finds on it. */
async function picturesOn(size: string): Promise<readonly (readonly string[])[]> {
  await at.page.getByLabel('Sheet size').selectOption(size)
  await papersMade(at.page)
  const folder = mkdtempSync(join(tmpdir(), 'fieldpair-'))
  const pdf = join(folder, 'papers.pdf')
  await at.page.pdf({ path: pdf, preferCSSPageSize: true, printBackground: true })
  const count = await at.page.locator('.sheet').count()
  for (let page = 1; page <= count; page += Math.ceil(count / PAGES))
    execFileSync('pdftoppm', [
      ...['-r', '300', '-mono', '-f', `${page}`, '-l', `${page}`, '-png', pdf, join(folder, 'page')],
    ])
  const pages = execFileSync('ls', [folder], { encoding: 'utf8' })
    .split('\n')
    .filter((name) => name.endsWith('.png'))
  const found: string[][] = []
  for (const name of pages) {
    const codes = await readBarcodes(new Blob([readFileSync(join(folder, name))]), {
      formats: ['QRCode'],
      maxNumberOfSymbols: 8,
      // What is read at the first try is read by a telephone too.
      ...{ tryRotate: false, tryInvert: false, tryDownscale: false, tryDenoise: false },
    })
    found.push(codes.map(({ text }) => text))
  }
  return found
}

const told = `Fieldpair\nRavel Moor survey camp\nrevision 1\nplan ${planFingerprint(demoPlan())}`

const SIZES = [
  ['A4', true],
  ['Letter', true],
  ['A6', false],
] as const
test.each(todays(SIZES, 3))(
  'every page on %s carries a picture that another program reads: which plan it is, or on a line card the line',
  async (size, hasLines) => {
    const pages = await picturesOn(size)
    expect(pages.length).toBeGreaterThan(2)
    const lines: string[] = []
    for (const codes of pages) {
      expect(codes.length).toBeGreaterThan(0)
      for (const code of codes) {
        if (code === told) continue
        const { hash, origin } = new URL(code)
        expect(origin).toBe(new URL(at.url).origin)
        const result = carriedOfFragment(hash)
        expect(result?.ok && result.value.partOf).toBe(planFingerprint(demoPlan()))
        if (result?.ok) lines.push([...result.value.plan.lines.keys()][0]!)
      }
    }
    expect(lines.length > 0).toBe(hasLines)
    expect(new Set(lines).size).toBe(lines.length)
  },
  120_000,
)
