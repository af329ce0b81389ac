import { lineIntersect } from '@turf/line-intersect'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Position } from '../../src/geo/position'
import { crossingsOf } from '../../src/hazard/crossings'
import { ridgeStretches } from '../../src/hazard/ridges'
import { stretchesBeside } from '../../src/hazard/stretches-beside'
import { groundFromGrids } from '../../src/terrain/ground-from-grids'
import { gridOver, metresOf } from '../terrain/made-ground'
import { at, type Metres, planOf } from '../terrain/made-plan'

//        road
//          |
//   a ─────┼──┐
//          |  │ buried
//   ───────┼──┼─── railway
//             b
describe('a line that crosses a road and a railway', () => {
  const { plan, line } = planOf(
    [
      [0, 0],
      [400, 0],
      [400, -300],
    ],
    ['surface', 'buried'],
    [
      {
        kind: 'road',
        path: [
          [300, 500],
          [300, -500],
        ],
      },
      {
        kind: 'railway',
        path: [
          [-500, -100],
          [900, -200],
        ],
      },
    ],
  )
  const crossings = crossingsOf(plan, line)

  test('meets the road square, 300 m out, on the surface', () => {
    expect(crossings[0]).toMatchObject({ kind: 'road', legIndex: 0, lay: 'surface', insideM: 0 })
    expect(crossings[0]!.distanceM).toBeCloseTo(300, 1)
    expect(crossings[0]!.angleDeg).toBeCloseTo(90, 3)
    expect(metresOf(crossings[0]!.position)[0]).toBeCloseTo(300, 6)
  })

  test('meets the railway aslant, buried, where the rails are', () => {
    // The rails fall 1 m in 14: at 400 m east they are 164.3 m south, and atan 14 is 85.9°.
    expect(crossings[1]).toMatchObject({ kind: 'railway', legIndex: 1, lay: 'buried' })
    expect(crossings[1]!.distanceM).toBeCloseTo(400 + 100 + 900 / 14, 0)
    expect(crossings[1]!.angleDeg).toBeCloseTo(85.9, 1)
    expect(crossings).toHaveLength(2)
  })

  test('asked again with nothing changed, it is the same list', () => {
    expect(crossingsOf({ ...plan, title: 'other' }, line)).toBe(crossings)
  })
})

test('a road through a bend of the line is crossed once', () => {
  const { plan, line } = planOf(
    [
      [0, 0],
      [300, 0],
      [600, 0],
    ],
    ['surface', 'surface'],
    [
      {
        kind: 'track',
        path: [
          [300, 100],
          [300, 0],
          [300, -100],
        ],
      },
    ],
  )
  expect(crossingsOf(plan, line)).toHaveLength(1)
})

test('an area is entered once where the line runs on through it over a bend', () => {
  const { plan, line } = planOf(
    [
      [0, 0],
      [300, 0],
      [800, 0],
    ],
    ['surface', 'surface'],
    [
      {
        kind: 'keep-out',
        path: [
          [200, -50],
          [200, 50],
          [500, 50],
          [500, -50],
          [200, -50],
        ],
      },
    ],
  )
  const [entry, ...others] = crossingsOf(plan, line)
  expect(others).toEqual([])
  expect(entry!.distanceM).toBeCloseTo(200, 1)
  expect(entry!.insideM).toBeCloseTo(300, 1)
})

test('a line that begins inside an area is in it from the start', () => {
  const { plan, line } = planOf(
    [
      [300, 0],
      [800, 0],
    ],
    ['surface'],
    [
      {
        kind: 'water',
        path: [
          [200, -50],
          [200, 50],
          [500, 50],
          [500, -50],
          [200, -50],
        ],
      },
    ],
  )
  expect(crossingsOf(plan, line)).toMatchObject([{ distanceM: 0, angleDeg: undefined }])
  expect(crossingsOf(plan, line)[0]!.insideM).toBeCloseTo(200, 1)
})

test('crossings are where Turf finds them', () => {
  const spot = fc.tuple(fc.integer({ min: -900, max: 900 }), fc.integer({ min: -900, max: 900 }))
  const route = fc.array(spot, { minLength: 3, maxLength: 6 })
  fc.assert(
    fc.property(route, route, (places: Metres[], path: Metres[]) => {
      const { plan, line } = planOf(
        places,
        places.slice(1).map(() => 'surface' as const),
        [
          // Nudged, the path has no vertex on the line, where "how often" is a matter of convention.
          { kind: 'road', path: path.map(([e, n], i) => [e + 0.37, n + 0.41 + i * 0.013] as const) },
        ],
      )
      const hazard = plan.hazards.get('h0' as never)!
      if (hazard.geometry.type !== 'LineString') return
      const toGeo = (positions: readonly Position[]) => ({
        type: 'LineString' as const,
        coordinates: positions.map(([lonDeg, latDeg]) => [lonDeg, latDeg]),
      })
      const reference = lineIntersect(toGeo(places.map(at)), toGeo(hazard.geometry.coordinates), {
        removeDuplicates: false,
      })
      const ours = crossingsOf(plan, line)
      for (const { geometry } of reference.features) {
        const spotM = metresOf(geometry.coordinates as [number, number])
        const nearest = Math.min(
          ...ours.map((c) =>
            Math.hypot(metresOf(c.position)[0] - spotM[0], metresOf(c.position)[1] - spotM[1]),
          ),
        )
        expect(nearest).toBeLessThan(0.01)
      }
      expect(ours.length).toBe(reference.features.length)
    }),
    { numRuns: 200 },
  )
})

test('across the antimeridian a crossing is found where it is', () => {
  const { plan, line } = planOf(
    [
      [0, 0],
      [400, 0],
    ],
    ['surface'],
    [
      {
        kind: 'road',
        path: [
          [300, 500],
          [300, -500],
        ],
      },
    ],
  )
  const shift = ([lonDeg, latDeg]: Position): Position => {
    const moved = lonDeg - 14 + 179.998
    return [moved > 180 ? moved - 360 : moved, latDeg]
  }
  const moved = {
    ...plan,
    stations: new Map([...plan.stations].map(([id, s]) => [id, { ...s, position: shift(s.position) }])),
    hazards: new Map(
      [...plan.hazards].map(([id, h]) => [
        id,
        {
          ...h,
          geometry: {
            type: 'LineString' as const,
            coordinates: (h.geometry.coordinates as Position[]).map(shift),
          },
        },
      ]),
    ),
  }
  expect(crossingsOf(moved, { ...line })[0]!.distanceM).toBeCloseTo(300, 1)
})

describe('a line beside a power line', () => {
  const wires = {
    kind: 'power-line' as const,
    path: [
      [-2000, 0],
      [2000, 0],
    ] as Metres[],
  }

  test('runs along with it for as long as it does', () => {
    const { plan, line } = planOf(
      [
        [0, 400],
        [0, 60],
        [500, 60],
        [500, 400],
      ],
      ['surface', 'surface', 'surface'],
      [wires],
    )
    const [beside, ...others] = stretchesBeside(plan, line, 'power-line', 100)
    expect(others).toEqual([])
    expect(beside!.nearestM).toBeCloseTo(60, 1)
    expect(beside!.parallelM).toBeCloseTo(500, -1)
    expect(beside!.endM - beside!.startM).toBeCloseTo(580, -2)
  })

  test('does not run along with it where it goes straight across', () => {
    const { plan, line } = planOf(
      [
        [0, 400],
        [0, -400],
      ],
      ['surface'],
      [wires],
    )
    const [beside] = stretchesBeside(plan, line, 'power-line', 100)
    expect(beside!.parallelM).toBe(0)
    expect(beside!.nearestM).toBeLessThan(5)
  })
})

describe('a line on a ridge', () => {
  // A ridge that runs east, 150 m high, its sides falling 1 in 4.
  const ridge = groundFromGrids([gridOver((_, n) => 150 - 0.25 * Math.abs(n), 30)])

  test('stands out along the crest and not on the side', () => {
    const [stretch] = ridgeStretches(ridge, [at([-500, 0]), at([500, 0])])
    expect(stretch!.startM).toBe(0)
    expect(stretch!.endM).toBeCloseTo(1000, 0)
    expect(ridgeStretches(ridge, [at([-500, 300]), at([500, 300])])).toEqual([])
  })

  test('does not stand out in a saddle, nor on a plain', () => {
    const saddle = groundFromGrids([gridOver((e, n) => 300 + (e * e - n * n) / 2500, 30)])
    expect(ridgeStretches(saddle, [at([-60, 0]), at([60, 0])])).toEqual([])
    expect(ridgeStretches(groundFromGrids([gridOver(() => 5, 30)]), [at([-500, 0]), at([500, 0])])).toEqual(
      [],
    )
  })
})
