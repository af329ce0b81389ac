import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { contains } from '../../../src/figure/geometry'
import { planeAbout } from '../../../src/geo/plane'
import type { Position } from '../../../src/geo/position'
import {
  EDGE_MM,
  matchAcross,
  planeToPaper,
  toPaper,
  windowOver,
  windowsAlong,
} from '../../../src/sheet/drawing/map-window'

const FRAME = { left: 4, top: 4, right: 186, bottom: 90 }
/** Rounding of the reckoning, mm. */
const ROUNDING = 1e-6
const INNER = {
  left: FRAME.left + EDGE_MM - ROUNDING,
  top: FRAME.top + EDGE_MM - ROUNDING,
  right: FRAME.right - EDGE_MM + ROUNDING,
  bottom: FRAME.bottom - EDGE_MM + ROUNDING,
}

const way = (): fc.Arbitrary<Position[]> =>
  fc.array(
    fc.tuple(fc.double({ min: 10, max: 10.4, noNaN: true }), fc.double({ min: 47, max: 47.2, noNaN: true })),
    { minLength: 2, maxLength: 12 },
  )

describe('a long line over several strips', () => {
  test('a frame without room is refused, for no step could be taken in it', () => {
    const positions: Position[] = [
      [10, 47],
      [10.2, 47],
    ]
    const low = { ...FRAME, bottom: FRAME.top + 20 }
    expect(() => windowsAlong(planeAbout(positions), positions, low, 25_000)).toThrow('no room')
  })

  test('lies whole within them, in order, each beginning where the one before ends', () => {
    fc.assert(
      fc.property(way(), (positions) => {
        const plane = planeAbout(positions)
        const { windows, cuts } = windowsAlong(plane, positions, FRAME, 25_000)
        expect(cuts).toHaveLength(windows.length - 1)
        for (const [i, cut] of cuts.entries()) {
          for (const window of [windows[i]!, windows[i + 1]!]) {
            expect(contains(INNER, planeToPaper(window, cut.at))).toBe(true)
          }
        }
        // Every place along the way is inside some strip, clear of its edge.
        for (const [i, from] of positions.slice(0, -1).entries()) {
          const to = positions[i + 1]!
          for (const part of [0, 0.13, 0.37, 0.5, 0.71, 0.9, 1]) {
            const [e0, n0] = plane.toPlane(from)
            const [e1, n1] = plane.toPlane(to)
            const place = [e0 + (e1 - e0) * part, n0 + (n1 - n0) * part] as const
            expect(windows.some((window) => contains(INNER, planeToPaper(window, place)))).toBe(true)
          }
        }
      }),
      { numRuns: 60 },
    )
  })

  test('bears a match line at the same place on the ground on both strips, square across the line', () => {
    const positions: Position[] = [
      [10, 47],
      [10.2, 47],
    ]
    const plane = planeAbout(positions)
    const { windows, cuts } = windowsAlong(plane, positions, FRAME, 25_000)
    const [a, b] = matchAcross(windows[0]!, cuts[0]!, 'to strip 2').points
    expect(Math.abs(a[0] - b[0])).toBeLessThan(0.1)
    expect((a[1] + b[1]) / 2).toBeCloseTo(planeToPaper(windows[0]!, cuts[0]!.at)[1], 6)
  })
})

describe('a net on one map', () => {
  test('fits one frame at the scale that is stated', () => {
    fc.assert(
      fc.property(way(), (positions) => {
        const window = windowOver(planeAbout(positions), positions, FRAME)
        return positions.every((position) => contains(INNER, toPaper(window, position)))
      }),
    )
  })
})
