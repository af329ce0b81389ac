import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { boxAround, contains, overlap, within } from '../../../src/figure/geometry'
import { type Label, placeLabels } from '../../../src/sheet/drawing/label-placer'

const BOUNDS = { left: 0, top: 0, right: 186, bottom: 130 }

const point = () =>
  fc.tuple(fc.double({ min: 5, max: 181, noNaN: true }), fc.double({ min: 5, max: 125, noNaN: true }))

const label = (id: string, at: readonly [number, number], widthMm: number): Label => ({
  id,
  text: id,
  widthMm,
  heightMm: 4,
  at,
  clearMm: 2.6,
})

describe('labels on a map', () => {
  test('overlap neither each other nor a symbol, and stay inside the frame, wherever the points lie', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(point(), fc.double({ min: 4, max: 40, noNaN: true })), { maxLength: 40 }),
        (wanted) => {
          const labels = wanted.map(([at, widthMm], i) => label(String(i), at, widthMm))
          const obstacles = labels.map(({ at }) => boxAround(at, 5.2, 3.6))
          const { placed, unplaced } = placeLabels(labels, { bounds: BOUNDS, obstacles, strokes: [] })
          expect(placed.length + unplaced.length).toBe(labels.length)
          for (const [i, { box }] of placed.entries()) {
            expect(within(box, BOUNDS)).toBe(true)
            expect(obstacles.some((other) => overlap(box, other))).toBe(false)
            expect(placed.slice(i + 1).some((other) => overlap(box, other.box))).toBe(false)
          }
        },
      ),
      { numRuns: 100 },
    )
  })

  test('that stand far off are tied to their point by a leader that ends at the label', () => {
    const crowd = Array.from({ length: 12 }, (_, i) =>
      label(`station ${i}`, [90 + (i % 3), 60 + Math.floor(i / 3)], 22),
    )
    const { placed } = placeLabels(crowd, {
      bounds: BOUNDS,
      obstacles: [boxAround([91, 61.5], 8, 7)],
      strokes: [],
    })
    const tied = placed.filter((one) => one.leader)
    expect(placed).toHaveLength(12)
    expect(tied.length).toBeGreaterThan(0)
    for (const { label, box, leader } of tied) {
      expect(leader![0]).toEqual(label.at)
      expect(contains(box, leader![1])).toBe(true)
    }
  })

  test('keep off a wire that runs past the point', () => {
    const wire = [
      [0, 60],
      [186, 60],
    ] as const
    const { placed } = placeLabels([label('A', [90, 60], 20)], {
      bounds: BOUNDS,
      obstacles: [],
      strokes: [wire],
    })
    const { box } = placed[0]!
    expect(box.bottom <= 60 || box.top >= 60).toBe(true)
  })

  test('stand the same each time', () => {
    const labels = [label('A', [50, 50], 20), label('B', [52, 51], 20), label('C', [51, 49], 20)]
    const around = { bounds: BOUNDS, obstacles: [], strokes: [] }
    expect(placeLabels(labels, around)).toEqual(placeLabels(labels, around))
  })

  test('for which there is no room are named, not dropped', () => {
    const tiny = { left: 0, top: 0, right: 10, bottom: 10 }
    const { unplaced } = placeLabels([label('A', [5, 5], 30)], { bounds: tiny, obstacles: [], strokes: [] })
    expect(unplaced.map(({ id }) => id)).toEqual(['A'])
  })
})
