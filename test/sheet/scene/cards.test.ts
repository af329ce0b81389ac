import { describe, expect, test } from 'vitest'
import { type Box, overlap, within } from '../../../src/figure/geometry'
import { netAtAGlance } from '../../../src/sheet/kinds/net-at-a-glance'
import { stationCards } from '../../../src/sheet/kinds/station-cards'
import { tagLabels } from '../../../src/sheet/kinds/tag-labels'
import { type Block, blocksWithin } from '../../../src/sheet/layout/block'
import { bodyOf, PAPER_SIZES, type PaperSize } from '../../../src/sheet/layout/paper-size'
import type { Paper } from '../../../src/sheet/paper'
import { PAPER_KINDS } from '../../../src/sheet/paper-kinds'
import type { PaperSource } from '../../../src/sheet/paper-source'
import { cardSheets } from '../../../src/sheet/scene/card-sheets'
import { LABEL_FORMATS } from '../../../src/sheet/scene/label-format'
import { notchCode } from '../../../src/sheet/scene/notch-code'
import { boxOf, PICTURE_MM, type Scene } from '../../../src/sheet/scene/scene'
import { todaysCases } from '../../cases'
import { demoPlan, sourceOf } from '../demo-source'
import { wildNet } from '../wild-net'

const scenesOf = (blocks: readonly Block[]): readonly Scene[] =>
  blocksWithin(blocks).flatMap((block) =>
    block.kind === 'drawing' && block.drawing?.kind === 'scene' ? [block.drawing.scene] : [],
  )

const cardScenes = (source: PaperSource, size: PaperSize) =>
  scenesOf(cardSheets(size, '', stationCards(source, size)).flat())

/** Words that lie on each other, on the picture, or beyond the sheet. Two letters may touch by the slant of one: 0.15 mm. */
function faultsOf({ shapes, widthMm, heightMm }: Scene): readonly string[] {
  const sheet: Box = { left: 0, top: 0, right: widthMm, bottom: heightMm }
  const words = shapes.flatMap((shape) =>
    shape.kind === 'text' || shape.kind === 'picture'
      ? [{ box: boxOf(shape), what: shape.kind === 'text' ? shape.text : 'picture' }]
      : [],
  )
  const thin = ({ left, right, top, bottom }: Box): Box => ({
    left: left + 0.15,
    right: right - 0.15,
    top: top + 0.15,
    bottom: bottom - 0.15,
  })
  const beyond = words.filter(({ box }) => !within(box, sheet)).map(({ what }) => `beyond: ${what}`)
  const sorted = words
    .map((word) => ({ ...word, box: thin(word.box) }))
    .toSorted((a, b) => a.box.top - b.box.top)
  const on = sorted.flatMap((word, i) => {
    const found: string[] = []
    for (let k = i + 1; k < sorted.length && sorted[k]!.box.top < word.box.bottom; k++)
      if (overlap(word.box, sorted[k]!.box)) found.push(`${word.what} on ${sorted[k]!.what}`)
    return found
  })
  return [...beyond, ...on]
}

const textOf = (scenes: readonly Scene[]) =>
  scenes
    .flatMap(({ shapes }) => shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : [])))
    .join(' ')

const NETS = todaysCases(30, 10).map((seed) => [seed, seed % 12 === 0 ? 40 : 2 + (seed % 14)] as const)

describe.each(NETS)('random net %i of %i stations', (seed, count) => {
  const source = {
    ...sourceOf(wildNet(seed + 1, count)),
    system: seed % 2 ? ('us' as const) : ('metric' as const),
  }

  const cardsOf = new Map(PAPER_SIZES.map((size) => [size, cardScenes(source, size)]))

  test.each(PAPER_SIZES)('nothing on its $name cards lies on other words or beyond the sheet', (size) => {
    expect(cardsOf.get(size)!.flatMap(faultsOf)).toEqual([])
  })

  test('every name stands whole on a card', () => {
    const bare = (text: string) => text.replace(/[\s\u00a0\u2066-\u2069]/g, '')
    for (const size of PAPER_SIZES) {
      const cards = bare(textOf(cardsOf.get(size)!))
      for (const { id, name } of source.plan.stations.values()) {
        const number = [...source.plan.stations.keys()].indexOf(id) + 1
        expect(cards).toContain(`${number}${bare(name)}`)
      }
    }
  })

  test('nothing on its net at a glance does, and every station has its number', () => {
    for (const page of PAPER_SIZES.filter(({ name }) => name !== 'A6')) {
      const { blocks } = netAtAGlance(source, bodyOf(page))
      const scenes = scenesOf(blocks)
      expect(scenes.flatMap(faultsOf)).toEqual([])
      const told = `${textOf(scenes)} ${JSON.stringify(blocksWithin(blocks).filter(({ kind }) => kind === 'text'))}`
      for (let number = 1; number <= count; number++) expect(told).toMatch(new RegExp(`\\b${number}\\b`))
    }
  })

  test('nothing on its labels does, of any size', () => {
    for (const page of PAPER_SIZES)
      for (const { name } of LABEL_FORMATS[page.name])
        expect(scenesOf(tagLabels({ ...source, labels: name }, page)).flatMap(faultsOf), name).toEqual([])
  })
})

describe('the demo', () => {
  const source = sourceOf(demoPlan())
  const { plan, report } = source
  const [a4] = PAPER_SIZES
  const cards = textOf(cardScenes(source, a4!))
  const labels = textOf(scenesOf(tagLabels(source, a4!)))

  test('has a card for every station, with its note, its lines and their loops', () => {
    for (const { name, note } of plan.stations.values()) {
      expect(cards).toContain(name)
      expect(cards).toContain(note)
    }
    for (const { loopOhms } of report.lines) expect(cards).toContain(`${loopOhms.toFixed(0)} Ω`)
  })

  test.each(PAPER_SIZES)(
    'has its board and its directory on $name on one card each, with all that is in them',
    (size) => {
      for (const kind of ['Board cards', 'Directory'] as const) {
        const [{ blocks, cards: own = [] }] = PAPER_KINDS[kind](source, bodyOf(size)) as [Paper]
        expect(own).toHaveLength(1)
        const scenes = scenesOf(cardSheets(size, '', own).flat())
        expect(scenes.flatMap(faultsOf)).toEqual([])
        const words = textOf(scenes).replace(/\s+/g, '')
        const cells = blocksWithin(blocks).flatMap((block) =>
          block.kind === 'table' ? block.table.rows.flat() : [],
        )
        expect(cells.length).toBeGreaterThan(10)
        for (const cell of cells)
          if (typeof cell === 'string') expect(words).toContain(cell.replace(/\s+/g, ''))
      }
    },
  )

  test('tells the ring volts of the report', () => {
    const rows = report.circuits.find(({ name }) => name === 'Camp net')!.ringing
    expect(rows.length).toBeGreaterThan(0)
    for (const { volts, minVolts } of rows) expect(cards).toContain(`${volts.toFixed(0)} of ${minVolts}`)
  })

  test('has a label for every tag', () => {
    for (const [i, { tags }] of report.lines.entries())
      for (const { number } of tags) expect(labels).toContain(`${i + 1}/${number}`)
  })
})

describe('labels', () => {
  test.each(PAPER_SIZES)('lie on a $name sheet, apart from each other, with room for the picture', (page) => {
    for (const { columns, rows, widthMm, heightMm, pitchMm, startMm, name } of LABEL_FORMATS[page.name]) {
      expect(startMm[0], name).toBeGreaterThanOrEqual(0)
      expect(startMm[0] + (columns - 1) * pitchMm[0] + widthMm, name).toBeLessThanOrEqual(page.widthMm + 1e-9)
      expect(startMm[1] + (rows - 1) * pitchMm[1] + heightMm, name).toBeLessThanOrEqual(page.heightMm + 1e-9)
      expect(pitchMm[0], name).toBeGreaterThanOrEqual(widthMm)
      expect(pitchMm[1], name).toBeGreaterThanOrEqual(heightMm)
      expect(heightMm, name).toBeGreaterThan(PICTURE_MM)
    }
  })

  test('have notches that tell ten lines and twenty tags apart', () => {
    const codes = new Set(
      Array.from({ length: 200 }, (_, i) => JSON.stringify(notchCode(1 + (i % 10), 1 + Math.floor(i / 10)))),
    )
    expect(codes.size).toBe(200)
    expect(notchCode(7, 19)).toEqual({
      top: ['long', 'short', 'short'],
      bottom: ['long', 'long', 'long', 'short', 'short', 'short', 'short'],
    })
  })
})
