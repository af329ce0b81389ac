import { execFileSync } from 'node:child_process'
import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { formatPlan } from '../../src/files/format-plan'
import { type Plan, stationName } from '../../src/plan/plan'
import { reportPlan } from '../../src/report/report-plan'
import { ALL, todays } from '../cases'
import { PAPER_PLANS } from '../sheet/paper-plans'
import { papersMade, type Visit, visit } from './visit'

/** All nets on all sheets in all units take a quarter of an hour: every other day one of two is printed. `PAPERS_TO=FOLDER` leaves the prints there, to be looked at. */
const EVERY = Object.keys(PAPER_PLANS).flatMap((name) =>
  (['A4', 'Letter'] as const).flatMap((size) =>
    (['Metric', 'US'] as const).map((units) => [name, size, units] as const),
  ),
)
const SLICE = [
  ['zone edge', 'Letter', 'US'],
  ['earth return', 'A4', 'Metric'],
] as const
const SLICES_DAY = todays([SLICE[0], null, SLICE[1], null], 4)

let at: Visit
beforeEach(async () => {
  at = await visit()
  await at.page.locator('.circuits button').first().waitFor()
})
afterEach(() => at?.close())

async function open(plan: Plan, name: string, units: string) {
  const { page } = at
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page
      .getByRole('button', { name: 'Plans', exact: true })
      .click()
      .then(() => page.getByRole('button', { name: 'Open a file…', exact: true }).click()),
  ])
  await chooser.setFiles({
    name: `${name}.plan.geojson`,
    mimeType: 'application/json',
    buffer: Buffer.from(formatPlan(plan)),
  })
  await expect.poll(() => page.locator('.card h1').first().textContent()).toContain(plan.title)
  await page.getByRole('button', { name: 'View', exact: true }).click()
  await page.getByRole('button', { name: units, exact: true }).click()
  await page.keyboard.press('Escape')
}

const oneLine = (text: string) => text.replace(/[\s\u2066-\u2069]+/g, ' ')
const MM_PER_PT = 25.4 / 72
const DPI = 300

interface Word {
  readonly text: string
  readonly box: readonly [number, number, number, number]
}

/** Words of one page with their places, pt, as Poppler finds them. */
function wordsOn(pdf: string, page: number): readonly Word[] {
  const html = execFileSync('pdftotext', ['-bbox', '-f', `${page}`, '-l', `${page}`, pdf, '-'], {
    encoding: 'utf8',
    maxBuffer: 1 << 26,
  })
  return [
    ...html.matchAll(
      /<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">(.*?)<\/word>/g,
    ),
  ].map(([, a, b, c, d, text]) => ({ text: text!, box: [Number(a), Number(b), Number(c), Number(d)] }))
}

/** A page as a copier makes it: 300 dots an inch, each black or white. */
function copied(pdf: string, page: number) {
  const ppm = execFileSync('pdftoppm', ['-r', `${DPI}`, '-gray', '-f', `${page}`, '-l', `${page}`, pdf], {
    maxBuffer: 1 << 28,
  })
  const [head, width, height] = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(ppm.subarray(0, 40).toString('latin1'))!
  const dots = ppm.subarray(head!.length)
  const [w, h] = [Number(width), Number(height)]
  const blackShare = (x0: number, y0: number, x1: number, y1: number) => {
    let black = 0
    let all = 0
    for (let y = Math.max(0, Math.floor(y0)); y < Math.min(h, Math.ceil(y1)); y++)
      for (let x = Math.max(0, Math.floor(x0)); x < Math.min(w, Math.ceil(x1)); x++) {
        all++
        if (dots[y * w + x]! < 128) black++
      }
    return all === 0 ? 0 : black / all
  }
  return { blackShare }
}

/** The international foot and mile. */
const METRES: Readonly<Record<string, number>> = { m: 1, km: 1000, ft: 0.3048, mi: 1609.344 }

/** The scale bars of the maps as they are laid out for print: their length in mm, what they say, and the scale that is stated beside them. */
const scaleBars = () =>
  at.page.locator('.map-view .foot-band').evaluateAll((bands) =>
    bands.map((band) => {
      const svg = (band as SVGGElement).ownerSVGElement!
      const zoom = Number(getComputedStyle(svg.closest('.sheets')!).getPropertyValue('--sheet-zoom')) || 1
      const bar = band.querySelector<SVGPathElement>('.bar')!
      const perUnit = svg.getScreenCTM()!.a / (96 / 25.4) / zoom
      const texts = [...band.querySelectorAll('text')].map((text) => text.textContent ?? '')
      const [, length, unit] = /^([\d.]+|½) (m|km|ft|mi)$/.exec(texts[0]!)!
      const [, scale] = /1 : ([\d\s\u00a0\u202f,]+)/.exec(texts[1]!)!
      return {
        mm: bar.getBBox().width * perUnit,
        length: length === '½' ? 0.5 : Number(length),
        unit: unit!,
        scale: Number(scale!.replace(/\D/g, '')),
      }
    }),
  )

/** Strokes that a crew must see, as the page draws them for print: class, width in mm, how dark. */
const strokes = () =>
  at.page.locator('.sheet svg').evaluateAll((drawings) =>
    drawings.flatMap((drawing) => {
      const svg = drawing as SVGSVGElement
      const scale = svg.getScreenCTM()!.a / (96 / 25.4)
      const zoom = Number(getComputedStyle(svg.closest('.sheets')!).getPropertyValue('--sheet-zoom')) || 1
      return [...svg.querySelectorAll('path, rect, circle, line')].flatMap((shape) => {
        const style = getComputedStyle(shape)
        const dark = /rgba?\((\d+), (\d+), (\d+)/.exec(style.stroke)
        if (!dark || style.stroke === 'none' || style.visibility === 'hidden') return []
        return [
          {
            what: `${svg.getAttribute('class')} ${shape.getAttribute('class') ?? shape.parentElement?.getAttribute('class') ?? shape.tagName}`,
            mm: (Number.parseFloat(style.strokeWidth) * scale) / zoom,
            light: Math.max(Number(dark[1]), Number(dark[2]), Number(dark[3])),
            opacity: Number(style.strokeOpacity) * Number(style.opacity),
          },
        ]
      })
    }),
  )

describe.each(ALL ? EVERY : SLICE)('%s on %s in %s units', (name, size, units) => {
  const isToday = ALL || SLICES_DAY.some((each) => each?.[0] === name)
  test.skipIf(!isToday)(
    'prints whole, readable after a copier, with all that a crew needs',
    async () => {
      const { page } = at
      const plan = PAPER_PLANS[name]!()
      await open(plan, name, units)
      await page.getByRole('button', { name: 'Papers', exact: true }).click()
      await page.getByLabel('Sheet size').selectOption(size)
      await page.getByRole('button', { name: 'All papers', exact: true }).click()
      await page.getByLabel('Circuit figures', { exact: true }).uncheck()
      const many = page.getByRole('button', { name: 'Show them all' })
      await expect
        .poll(
          async () => {
            if (await many.isVisible()) await many.click()
            return page.locator('.papers-acts button:enabled', { hasText: 'Print' }).count()
          },
          { timeout: 120_000 },
        )
        .toBe(1)
      await papersMade(page)
      const sheets = await page.locator('.sheet').count()
      const over = await page.locator('.sheet').evaluateAll((all) =>
        all.flatMap((sheet) => {
          const edge = sheet.getBoundingClientRect()
          return [...sheet.querySelectorAll('table, .drawing, .box, p, footer')]
            .map((part) => ({ part, at: part.getBoundingClientRect() }))
            .filter(({ at: own }) => own.right > edge.right + 1 || own.bottom > edge.bottom + 1)
            .map(({ part }) => `${sheet.getAttribute('aria-label')}: ${part.textContent?.slice(0, 40)}`)
        }),
      )
      expect(over).toEqual([])

      await page.emulateMedia({ media: 'print' })
      const drawn = await strokes()
      const bars = await scaleBars()
      await page.emulateMedia({ media: null })
      expect(bars.length).toBeGreaterThan(0)
      for (const { mm, length, unit, scale } of bars)
        expect(
          Math.abs(mm - (length * METRES[unit]! * 1000) / scale),
          `${length} ${unit} at 1 : ${scale}`,
        ).toBeLessThan(0.1)
      // 0.2 mm, less the rounding of the browser; white under a word is meant to be white.
      const faint = drawn.filter(
        ({ mm, light, opacity }) => light < 250 && (mm < 0.19 || light > 110 || opacity < 0.5),
      )
      expect([
        ...new Set(faint.map(({ what, mm, light }) => `${what} ${mm.toFixed(2)} mm ${light}`)),
      ]).toEqual([])

      const pdf = process.env.PAPERS_TO
        ? join(process.env.PAPERS_TO, `${name}-${size}-${units}.pdf`.replaceAll(' ', '-'))
        : join(mkdtempSync(join(tmpdir(), 'fieldpair-')), 'papers.pdf')
      await page.pdf({ path: pdf, preferCSSPageSize: true, printBackground: true })
      await page.getByRole('button', { name: 'Close', exact: true }).click()
      const info = execFileSync('pdfinfo', [pdf], { encoding: 'utf8' })
      expect(Number(/Pages:\s+(\d+)/.exec(info)![1])).toBe(sheets)
      const [, widthPt, heightPt] = /Page size:\s+([\d.]+) x ([\d.]+)/.exec(info)!
      const wanted = size === 'A4' ? [210, 297] : [215.9, 279.4]
      expect(Math.abs(Number(widthPt) * MM_PER_PT - wanted[0]!)).toBeLessThan(0.5)
      expect(Math.abs(Number(heightPt) * MM_PER_PT - wanted[1]!)).toBeLessThan(0.5)

      const text = oneLine(
        execFileSync('pdftotext', ['-raw', pdf, '-'], { encoding: 'utf8', maxBuffer: 1 << 27 }),
      )
      const bare = text.replaceAll(' ', '')
      const report = reportPlan(plan)
      for (const { id, note } of plan.stations.values()) {
        expect(bare).toContain(oneLine(stationName(plan, id)).replaceAll(' ', ''))
        if (note) expect(bare).toContain(note.replaceAll(' ', ''))
      }
      for (const [i, { tags, splices, crossings }] of report.lines.entries()) {
        for (const { number } of tags) expect(text).toContain(`${i + 1}/${number}`)
        const count = splices.reduce((sum, own) => sum + own.length, 0)
        for (let k = 1; k <= count; k++) expect(text).toContain(`S${k}`)
        for (const crossing of crossings)
          if (crossing.name) expect(bare).toContain(crossing.name.replaceAll(' ', ''))
      }

      // The first pages, some from the middle, the last: each word that Poppler finds must still be there in hard black and white.
      const chosen = [...new Set([1, 2, 3, Math.ceil(sheets / 2), sheets - 1, sheets])].filter(
        (n) => n >= 1 && n <= sheets,
      )
      for (const n of chosen) {
        const { blackShare } = copied(pdf, n)
        const scale = DPI / 72
        for (const { text: word, box } of wordsOn(pdf, n)) {
          if (!/[A-Za-z0-9]/.test(word)) continue
          const share = blackShare(box[0] * scale, box[1] * scale, box[2] * scale, box[3] * scale)
          expect(share, `${word} on page ${n}`).toBeGreaterThan(0.03)
          expect(box[0]).toBeGreaterThanOrEqual(-0.5)
          expect(box[2]).toBeLessThanOrEqual(Number(widthPt) + 0.5)
          expect(box[3]).toBeLessThanOrEqual(Number(heightPt) + 0.5)
        }
      }

      expect(at.faults).toEqual([])
    },
    300_000,
  )
})
