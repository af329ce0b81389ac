import { expect, test } from 'vitest'
import { type Box, overlap } from '../../src/figure/geometry'
import { type Block, blocksWithin, heightOfMm } from '../../src/sheet/layout/block'
import { bodyOf, PAPER_SIZES } from '../../src/sheet/layout/paper-size'
import { roomUnderHead } from '../../src/sheet/layout/sheet-head'
import { type MadePaper, PAPER_JOBS } from '../../src/sheet/paper-jobs'
import { PAPER_NAMES } from '../../src/sheet/paper-names'
import { todays } from '../cases'
import { sourceOf } from './demo-source'
import { wildNet } from './wild-net'

const SIZES = PAPER_SIZES.filter(({ name }) => name !== 'A6')
/** Each net on each sheet; two of another size each day, one of them of forty stations now and then. */
const NETS = SIZES.flatMap((size, half) =>
  Array.from({ length: 60 }, (_, i) => {
    const seed = (i + 30 * half) % 60
    return { seed, count: seed % 12 === 11 ? 40 : 2 + ((seed * 5) % 19), size }
  }),
)
/** Rounding of the reckoning, mm. */
const ROUNDING_MM = 0.01

const drawings = (blocks: readonly Block[]) =>
  blocksWithin(blocks).flatMap((block) => (block.kind === 'drawing' && block.drawing ? [block.drawing] : []))

function overlapping(boxes: readonly Box[]): number {
  let count = 0
  for (const [i, box] of boxes.entries())
    for (const other of boxes.slice(i + 1)) if (overlap(box, other)) count++
  return count
}

test.each(todays(NETS, 60))(
  'random net $seed of $count stations: no sheet of any paper on $size.name holds more than it has room for',
  ({ seed, count, size }) => {
    const plan = wildNet(seed + 101, count)
    const system = seed % 2 ? ('us' as const) : ('metric' as const)
    const source = { ...sourceOf(plan), system }
    const papers: MadePaper[] = []
    const kinds = PAPER_NAMES.filter((name) => name !== 'Circuit figures')
    PAPER_JOBS.papers(
      { ...source, room: bodyOf(size), kinds },
      { part: (paper: MadePaper) => papers.push(paper), handOver: () => undefined },
    )
    for (const { kind, about, isBare, sheets, code } of papers) {
      if (isBare) continue
      const head = roomUnderHead(bodyOf(size), kind, plan.title)
      const room = roomUnderHead(head, about, '', code !== undefined)
      for (const blocks of sheets) {
        // What is too tall for any sheet stands alone on one.
        if (blocks.filter((block) => block.kind !== 'heading').length < 2) continue
        expect(heightOfMm(blocks, room.widthMm), `${kind} ${about}`).toBeLessThanOrEqual(
          room.heightMm + ROUNDING_MM,
        )
      }
      for (const drawing of drawings(sheets.flat())) {
        if (drawing.kind === 'circuit') {
          const { boxes, widthMm, heightMm } = drawing.drawing
          expect(overlapping(boxes.map(({ box }) => box)), kind).toBe(0)
          for (const { box } of boxes) {
            expect(box.left).toBeGreaterThanOrEqual(-ROUNDING_MM)
            expect(box.right).toBeLessThanOrEqual(widthMm + ROUNDING_MM)
            expect(box.bottom).toBeLessThanOrEqual(heightMm + ROUNDING_MM)
          }
        }
        if (drawing.kind === 'map') {
          expect(overlapping(drawing.drawing.labels.map(({ box }) => box)), `${kind} ${about}`).toBe(0)
        }
      }
    }
  },
)
