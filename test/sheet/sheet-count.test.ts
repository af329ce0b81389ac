import { describe, expect, test } from 'vitest'
import { reportPlan } from '../../src/report/report-plan'
import { cardLayer } from '../../src/sheet/lay-cards'
import { type Block, heightOfMm } from '../../src/sheet/layout/block'
import { bodyOf, PAPER_SIZES } from '../../src/sheet/layout/paper-size'
import { type MadePaper, PAPER_JOBS } from '../../src/sheet/paper-jobs'
import { FIRST_PAPERS, PAPER_NAMES, type PaperName, WITH_A_BOARD } from '../../src/sheet/paper-names'
import { groundFromGrids } from '../../src/terrain/ground-from-grids'
import { bigPlan } from '../bench/big-plan'
import { todays } from '../cases'
import { demoGrid, demoPlan, sourceOf } from './demo-source'
import { PAPER_PLANS } from './paper-plans'

const LARGE = PAPER_SIZES.filter(({ name }) => name !== 'A6')
const DEMO = sourceOf(demoPlan())
const TWENTY_FIVE = sourceOf(bigPlan({ stations: 25, perCircuit: 5, bends: 2 }))

function made(source: typeof DEMO, size: (typeof LARGE)[number], kinds: readonly PaperName[]) {
  const papers: MadePaper[] = []
  PAPER_JOBS.papers(
    { ...source, room: bodyOf(size), kinds },
    {
      part: (paper: MadePaper) => papers.push(paper),
      handOver: () => undefined,
    },
  )
  return cardLayer()(papers, size)
}
const sheetsOf = (papers: readonly MadePaper[]) => papers.reduce((sum, { sheets }) => sum + sheets.length, 0)

/** Bold words of the largest size that a sheet of cards or labels has: one for each of them. */
function thingsOn(sheet: readonly Block[]): number {
  const texts = sheet.flatMap((block) =>
    block.kind === 'drawing' && block.drawing?.kind === 'scene'
      ? block.drawing.scene.shapes.filter((shape) => shape.kind === 'text' && shape.isBold)
      : [],
  )
  const sizes = texts.map((shape) => (shape.kind === 'text' ? shape.sizeMm : 0))
  return sizes.filter((mm) => mm >= 0.6 * Math.max(...sizes)).length
}
const mostThings = (sheets: MadePaper['sheets']) => Math.max(...sheets.map(thingsOn))

describe.each(todays(LARGE, 2))('on $name', (size) => {
  test('25 stations take at most 25 sheets', () => {
    expect(sheetsOf(made(TWENTY_FIVE, size, FIRST_PAPERS))).toBeLessThanOrEqual(25)
  })

  test('the net at a glance is one sheet', () => {
    for (const source of [DEMO, TWENTY_FIVE])
      expect(sheetsOf(made(source, size, ['Net at a glance']))).toBe(1)
  })

  test('sixty stations take at most 72 sheets', () => {
    const sixty = sourceOf(PAPER_PLANS['60 stations']!())
    expect(sheetsOf(made(sixty, size, FIRST_PAPERS))).toBeLessThanOrEqual(72)
  })
})

const UNITS = LARGE.flatMap((size) => (['metric', 'us'] as const).map((system) => ({ size, system })))
test.each(todays(UNITS, 4))(
  'on $size.name the demo on its ground takes at most 16 sheets in $system units for those who lay and speak, and 31 in all',
  async ({ size, system }) => {
    const grid = await demoGrid()
    const plan = demoPlan()
    const source = { ...sourceOf(plan), report: reportPlan(plan, groundFromGrids([grid])), system }
    await PAPER_JOBS.grids([grid])
    try {
      expect(sheetsOf(made(source, size, [...FIRST_PAPERS, ...WITH_A_BOARD]))).toBeLessThanOrEqual(16)
      const all = PAPER_NAMES.filter((name) => name !== 'Circuit figures')
      expect(sheetsOf(made(source, size, all))).toBeLessThanOrEqual(31)
    } finally {
      await PAPER_JOBS.grids([])
    }
  },
)

const FILLED = Object.keys(PAPER_PLANS).flatMap((name) => LARGE.map((size) => ({ name, size })))
test.each(todays(FILLED, FILLED.length / 2))(
  'no sheet of $name on $size.name holds less than a third, unless it is the only one of its paper',
  ({ name, size }) => {
    for (const { kind, sheets, isBare } of made(sourceOf(PAPER_PLANS[name]!()), size, PAPER_NAMES)) {
      if (sheets.length === 1) continue
      const { widthMm, heightMm } = bodyOf(size)
      for (const sheet of sheets)
        if (isBare) expect(thingsOn(sheet), kind).toBeGreaterThanOrEqual(mostThings(sheets) / 3)
        else expect(heightOfMm(sheet, widthMm), kind).toBeGreaterThan(heightMm / 3)
    }
  },
)
