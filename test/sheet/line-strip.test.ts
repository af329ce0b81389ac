import { describe, expect, test } from 'vitest'
import { drawStrip } from '../../src/figure/line-strip'
import { measurePlan } from '../../src/measure/measure-line'
import { pointAtWireM } from '../../src/measure/place-on-line'
import { stripDrawings } from '../../src/sheet/kinds/strip-block'
import { lineStops } from '../../src/sheet/line-stops'
import { demoPlan, sourceOf } from './demo-source'

const TRUE_NORTH = { word: 'true', of: (deg: number) => deg } as const
const source = sourceOf(demoPlan())
const measured = measurePlan(source.plan)
const WIDTH_MM = 186

const strips = source.report.lines.map((line) => {
  const drawn = source.plan.lines.get(line.id)!
  const stops = lineStops(source, drawn, line, TRUE_NORTH)
  const [block] = stripDrawings(source, { line: drawn, measured: line, stops }, WIDTH_MM)
  if (block?.kind !== 'drawing' || block.drawing?.kind !== 'strip') throw new Error('no strip')
  return { line, drawn, stops, drawing: block.drawing.drawing }
})

describe('a strip', () => {
  test('has every stop at its distance, in proportion to the ground', () => {
    for (const { line, stops, drawing } of strips) {
      const roomMm = drawing.right - drawing.left
      for (const { groundM, kinds } of stops) {
        const x = drawing.left + (groundM / line.groundM) * roomMm
        for (const kind of kinds)
          expect(drawing.marks.some((mark) => mark.kind === kind && Math.abs(mark.x - x) < 0.02)).toBe(true)
      }
    }
  })

  // A uniform wire: R = R_whole · wire / wire_whole, and so its capacitance.
  test('has each reading straight below the place at which the wire comes to it', () => {
    for (const { line, drawn, drawing } of strips) {
      const wire = source.catalog.wires.get(drawn.wire)!
      const totals = {
        'Ω loop': line.loopOhms,
        'nF dry': (wire.nanoFPerKm * line.wireM) / 1000,
        'nF wet': ((wire.wetNanoFPerKm ?? wire.nanoFPerKm) * line.wireM) / 1000,
      }
      for (const [name, total] of Object.entries(totals)) {
        const { ticks } = drawing.scales.find((scale) => scale.name === name)!
        expect(ticks.length).toBeGreaterThan(3)
        for (const { x, text } of ticks) {
          const wireM = (Number(text) / total) * line.wireM
          const { groundM } = pointAtWireM(source.plan, measured.get(line.id)!, drawn, wireM)
          expect(x).toBeCloseTo(drawing.left + (groundM / line.groundM) * (drawing.right - drawing.left), 1)
        }
      }
    }
  })

  test('of wire of which wet is known reads more when it is wet', () => {
    for (const { drawing } of strips) {
      const last = (name: string) =>
        Number(drawing.scales.find((scale) => scale.name === name)!.ticks.at(-1)!.text)
      expect(last('nF wet')).toBeGreaterThanOrEqual(last('nF dry'))
    }
  })
})

describe('names over a strip', () => {
  test('cover none of each other and stay on the sheet, however many there are and however long', () => {
    for (const count of [2, 9, 40, 151]) {
      for (const letters of [1, 12, 80]) {
        const marks = Array.from({ length: count }, (_, i) => ({
          kind: (['station', 'tag', 'bend', 'crossing', 'splice'] as const)[i % 5]!,
          groundM: (1000 * i) / (count - 1),
          name: 'M'.repeat(letters),
        }))
        const drawing = drawStrip(
          {
            groundM: 1000,
            wireM: 1200,
            legs: [],
            done: [],
            marks,
            distance: { name: 'm', perM: 1 },
            scales: [],
            wireAt: (groundM) => groundM * 1.2,
            groundAt: (wireM) => wireM / 1.2,
            ground: [],
            hung: [],
            heightText: String,
          },
          { fromM: 0, toM: 1000 },
          WIDTH_MM,
        )
        // Arial Bold's M is 0.833 em wide; letters are 2.8 mm.
        const boxes = drawing.labels.map(({ text, x, y }) => {
          const half = ([...text].length * 0.833 * 2.8) / 2
          return { left: x - half, right: x + half, y }
        })
        expect(boxes.length).toBeGreaterThan(0)
        for (const [i, box] of boxes.entries()) {
          expect(box.left).toBeGreaterThan(-0.01)
          expect(box.right).toBeLessThan(WIDTH_MM + 0.01)
          for (const other of boxes.slice(i + 1))
            expect(other.y !== box.y || other.right <= box.left || box.right <= other.left).toBe(true)
        }
      }
    }
  })
})
