import { describe, expect, test } from 'vitest'
import { degreeM } from '../../src/geo/earth'
import { cellSizeM } from '../../src/terrain/grid-extent'
import { groundFromGrids } from '../../src/terrain/ground-from-grids'
import { gridOver, LAT, place } from './made-ground'

const { lonM } = degreeM(LAT)

/** Length of the surface over a leg by Simpson's rule on its exact slope: the reference, with no grid in it. */
function surfaceM(
  heightM: (e: number, n: number) => number,
  a: [number, number],
  b: [number, number],
): number {
  const n = 20_000
  const runM = Math.hypot(b[0] - a[0], b[1] - a[1]) / n
  let sumM = 0
  const at = (i: number) => heightM(a[0] + ((b[0] - a[0]) * i) / n, a[1] + ((b[1] - a[1]) * i) / n)
  for (let i = 0; i < n; i++) sumM += Math.hypot(runM, at(i + 1) - at(i))
  return sumM
}

describe('the length of the ground', () => {
  test('is the map’s, to the last bit, where it is flat', () => {
    const ground = groundFromGrids([gridOver(() => 412, 30)])
    expect(ground.groundM(place(-2000, 300), place(1700, -900), 3889.4)).toBe(3889.4)
  })

  // A plane that climbs 0.3 m a metre east and 0.1 m a metre north: along a leg of direction (e, n) it climbs 0.3e + 0.1n.
  test.each([
    { to: [1000, 0], slope: 0.3 },
    { to: [0, 1000], slope: 0.1 },
    { to: [600, 800], slope: 0.3 * 0.6 + 0.1 * 0.8 },
  ] as const)('on a plane is the run times √(1 + slope²), towards $to', ({ to, slope }) => {
    const ground = groundFromGrids([gridOver((e, n) => 500 + 0.3 * e + 0.1 * n, 30)])
    expect(ground.groundM(place(0, 0), place(to[0], to[1]), 1000)! / 1000).toBeCloseTo(
      Math.sqrt(1 + slope ** 2),
      6,
    )
  })

  // A cone of slope 0.4 about the middle. Past its top, at distance p, a leg climbs along a hyperbola z = 0.4 √(x² + p²).
  test.each([0, 200, 700])('over a cone, %i m beside its top, is within 0.2 % of the surface', (p) => {
    const cone = (e: number, n: number) => 1500 - 0.4 * Math.hypot(e, n)
    const trueM = surfaceM(cone, [-2000, p], [2000, p])
    for (const cellM of [10, 30, 90]) {
      const lengthM = groundFromGrids([gridOver(cone, cellM)]).groundM(place(-2000, p), place(2000, p), 4000)!
      expect(Math.abs(lengthM / trueM - 1)).toBeLessThan(0.002)
    }
  })

  test('over smooth hills kept as whole metres is within 0.2 % of the surface, whatever the cell', () => {
    const hills = (e: number, n: number) => 600 + 80 * Math.sin(e / 300) * Math.cos(n / 420) + 0.05 * n
    const trueM = surfaceM(hills, [-2500, -1800], [2400, 2100])
    const mapM = Math.hypot(4900, 3900)
    for (const cellM of [5, 10, 30]) {
      const ground = groundFromGrids([gridOver(hills, cellM, { whole: true })])
      const lengthM = ground.groundM(place(-2500, -1800), place(2400, 2100), mapM)!
      expect(Math.abs(lengthM / trueM - 1)).toBeLessThan(0.002)
    }
  })

  test('is not known where any of the leg lies off the grid', () => {
    const ground = groundFromGrids([gridOver(() => 412, 30)])
    expect(ground.groundM(place(0, 0), place(5000, 0), 5000)).toBeUndefined()
    expect(ground.heightM(...place(5000, 0))).toBeUndefined()
    expect(groundFromGrids([]).groundM(place(0, 0), place(10, 0), 10)).toBeUndefined()
  })
})

describe('several grids', () => {
  test('the finest answers where it knows', () => {
    const fine = gridOver(() => 100, 10)
    const coarse = gridOver(() => 200, 90)
    const ground = groundFromGrids([coarse, fine])
    expect(ground.heightM(...place(5, 5))).toBe(100)
    expect(ground.grids.map((grid) => Math.round(cellSizeM(grid)))).toEqual([10, 90])
  })

  test('a void of the finest is filled by the next', () => {
    const fine = gridOver((e) => (e > 0 ? Number.NaN : 100), 10)
    const coarse = gridOver(() => 100, 90)
    const ground = groundFromGrids([fine, coarse])
    expect(ground.heightM(...place(500, 5))).toBe(100)
    expect(ground.groundM(place(-500, 0), place(500, 0), 1000)).toBe(1000)
  })
})

test('a grid across the antimeridian is one piece', () => {
  const grid = gridOver((e) => 100 + 0.1 * e, 30)
  const shifted = { ...grid, transform: { ...grid.transform, x0: grid.transform.x0 - 14 + 180 } }
  const ground = groundFromGrids([shifted])
  expect(ground.heightM(-180 + 500 / lonM, LAT)).toBeCloseTo(150, 3)
  const lengthM = ground.groundM([180 - 500 / lonM, LAT], [-180 + 500 / lonM, LAT], 1000)!
  expect(lengthM / 1000).toBeCloseTo(Math.sqrt(1.01), 5)
})
