import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader'
import { seeded } from '../../src/budget/seeded'
import { carriedOfFragment } from '../../src/files/carry/carried'
import { planFingerprint } from '../../src/files/plan-fingerprint'
import { ALL, isTurn, todays } from '../cases'
import { photograph } from '../files/carry/photograph'
import { demoPlan } from '../sheet/demo-source'
import { groundIsThere, papersMade, type Visit, visit } from './visit'

/** A reader takes a second a page: some, spread over all papers. */
const PAGES = ALL ? 100 : 3

let at: Visit

beforeAll(async () => {
  const wasm = readFileSync('node_modules/zxing-wasm/dist/reader/zxing_reader.wasm')
  await prepareZXingModule({
    overrides: { wasmBinary: new Uint8Array(wasm).buffer },
    fireImmediately: true,
  })
  at = await visit()
  await groundIsThere(at.page)
  await at.page.getByRole('button', { name: 'Papers', exact: true }).click()
})
afterAll(() => at?.close())

/** The papers of the demo as they go to the printer. */
async function printed(size: string) {
  await at.page.getByLabel('Sheet size').selectOption(size)
  await papersMade(at.page)
  const folder = mkdtempSync(join(tmpdir(), 'fieldpair-'))
  const pdf = join(folder, 'papers.pdf')
  await at.page.pdf({ path: pdf, preferCSSPageSize: true, printBackground: true })
  return { folder, pdf }
}

/** Pages as they come from the printer, at 300 dots an inch in black and white, and what a reader of its own finds on it. */
async function picturesOn(size: string): Promise<readonly (readonly string[])[]> {
  const { folder, pdf } = await printed(size)
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
      maxNumberOfSymbols: 12,
      // What is read at the first try is read by a telephone too.
      ...{ tryRotate: false, tryInvert: false, tryDownscale: false, tryDenoise: false },
    })
    found.push(codes.map(({ text }) => text))
  }
  return found
}

const told = `Fieldpair\nRavel Moor survey camp\nrevision 1\nplan ${planFingerprint(demoPlan())}`

test.each(todays(['A4', 'Letter', 'A6'], 3))(
  'every page on %s carries a picture that another program reads: which plan it is, or what of it opens',
  async (size) => {
    const pages = await picturesOn(size)
    expect(pages.length).toBeGreaterThan(2)
    const opening: string[] = []
    for (const codes of pages) {
      expect(codes.length).toBeGreaterThan(0)
      for (const code of codes) {
        if (code === told) continue
        const { hash, origin } = new URL(code)
        expect(origin).toBe(new URL(at.url).origin)
        const result = carriedOfFragment(hash)
        expect(result?.ok && result.value.partOf).toBe(planFingerprint(demoPlan()))
        opening.push(code)
      }
    }
    expect(opening.length).toBeGreaterThan(0)
    expect(new Set(opening).size).toBe(opening.length)
  },
  120_000,
)

/** A film of grey pictures as Chromium's camera plays it, and again: YUV4MPEG2 (as MJPEG tools describe it, from memory). */
function writeFilm(path: string, side: number, pictures: readonly Uint8ClampedArray[]) {
  const plain = Buffer.alloc((side * side) / 2, 128)
  const frames = pictures.flatMap((grey) => [Buffer.from('FRAME\n'), Buffer.from(grey), plain])
  writeFileSync(
    path,
    Buffer.concat([Buffer.from(`YUV4MPEG2 W${side} H${side} F5:1 Ip A1:1 C420jpeg\n`), ...frames]),
  )
}

/** With a browser and a film of its own; on the days between other nets are printed (paper-matrix.test.ts). */
const withCamera = test.skipIf(!isTurn(1, 2))

withCamera(
  'the program’s own camera, held by hand over a printed line card, opens that line',
  async () => {
    const { folder, pdf } = await printed('A4')
    // The upper right corner of the second page, the first line card: 50 mm with the code and white paper about it.
    const dots = 590
    const ppm = execFileSync(
      'pdftoppm',
      [
        '-r',
        '300',
        '-gray',
        '-f',
        '2',
        '-l',
        '2',
        '-x',
        '1819',
        '-y',
        '71',
        '-W',
        `${dots}`,
        '-H',
        `${dots}`,
        pdf,
      ],
      { maxBuffer: 1 << 24 },
    )
    const scan = ppm.subarray(ppm.length - dots * dots)
    const isDark = (across: number, down: number) =>
      (scan[Math.floor(down * dots) * dots + Math.floor(across * dots)] ?? 255) < 128 &&
      across >= 0 &&
      across < 1
    const next = seeded(7)
    const film = join(folder, 'card.y4m')
    writeFilm(
      film,
      800,
      Array.from({ length: 6 }, () => photograph(isDark, 800, next)),
    )

    const crew = await visit({ camera: film })
    const { page } = crew
    await page.locator('.circuits button').first().waitFor()
    await page.getByRole('button', { name: 'Plans', exact: true }).click()
    await page.getByRole('button', { name: 'Take one from a screen…' }).click()
    await page.getByRole('button', { name: 'Use the camera' }).click()
    await page.getByRole('button', { name: 'Go to the line' }).click({ timeout: 45_000 })
    await expect.poll(() => page.locator('.card h1').first().textContent()).toContain('Sheepfold')
    expect(crew.faults).toEqual([])
    await crew.close()
  },
  120_000,
)
