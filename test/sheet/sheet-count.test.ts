import { describe, expect, test } from 'vitest'
import { heightOfMm } from '../../src/sheet/layout/block'
import { bodyOf, PAPER_SIZES } from '../../src/sheet/layout/paper-size'
import { type MadePaper, PAPER_JOBS } from '../../src/sheet/paper-jobs'
import { FIRST_PAPERS, PAPER_NAMES, type PaperName } from '../../src/sheet/paper-names'
import { bigPlan } from '../bench/big-plan'
import { demoPlan, sourceOf } from './demo-source'

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
  return papers
}
const sheetsOf = (papers: readonly MadePaper[]) => papers.reduce((sum, { sheets }) => sum + sheets.length, 0)

describe.each(LARGE)('on $name', (size) => {
  test('25 stations take at most 40 sheets', () => {
    expect(sheetsOf(made(TWENTY_FIVE, size, FIRST_PAPERS))).toBeLessThanOrEqual(40)
  })

  test('the net at a glance is one sheet', () => {
    for (const source of [DEMO, TWENTY_FIVE])
      expect(sheetsOf(made(source, size, ['Net at a glance']))).toBe(1)
  })

  test('no sheet holds less than a third, unless it is the only one of its paper', () => {
    for (const source of [DEMO, TWENTY_FIVE])
      for (const { kind, sheets, isBare } of made(source, size, PAPER_NAMES)) {
        if (isBare || sheets.length === 1) continue
        const { widthMm, heightMm } = bodyOf(size)
        for (const sheet of sheets) expect(heightOfMm(sheet, widthMm), kind).toBeGreaterThan(heightMm / 3)
      }
  })
})
