import { describe, expect, test } from 'vitest'
import type { Position } from '../../src/geo/position'
import { crossingsOf } from '../../src/hazard/crossings'
import type { HazardKind, Plan } from '../../src/plan/plan'
import { walkCells } from '../../src/route/raster-walk'
import { DEFAULT_ROUTE_WEIGHTS } from '../../src/route/route-weights'
import { type SuggestedRoute, suggestRoute } from '../../src/route/suggest-route'
import { groundFromGrids } from '../../src/terrain/ground-from-grids'
import { gridOver, metresOf } from '../terrain/made-ground'
import { at, type Metres, planOf } from '../terrain/made-plan'
import { seeded } from '../terrain/seeded'

type Drawn = readonly { readonly kind: HazardKind; readonly path: readonly Metres[] }[]

const square = (e: number, n: number, half: number): Metres[] => [
  [e - half, n - half],
  [e + half, n - half],
  [e + half, n + half],
  [e - half, n + half],
  [e - half, n - half],
]

function route(
  from: Metres,
  to: Metres,
  drawn: Drawn,
  options: { weights?: object; ground?: ReturnType<typeof groundFromGrids> } = {},
) {
  const { plan } = planOf([from, to], ['surface'], drawn)
  const weights = { ...DEFAULT_ROUTE_WEIGHTS, ...options.weights }
  const hazards = [...plan.hazards.values()]
  const result = suggestRoute(
    { from: at(from), to: at(to), hazards, weights, mostCells: 60_000 },
    options.ground,
  )
  if (!result?.ok) throw new Error(JSON.stringify(result))
  return { plan, route: result.value }
}

/** What the suggested line meets. */
function met(plan: Plan, from: Metres, to: Metres, { bends }: SuggestedRoute) {
  const drawn = planOf([from, to], ['surface']).line
  const line = { ...drawn, bends, legs: [...bends, 0].map(() => ({ lay: 'surface' as const })) }
  return crossingsOf(plan, line).map(({ kind }) => kind)
}

describe('a suggested route', () => {
  test('over open ground is the straight line', () => {
    const { route: straight } = route([0, 0], [1500, 700], [])
    expect(straight.bends).toEqual([])
    expect(straight.mapM).toBeCloseTo(Math.hypot(1500, 700), 0)
  })

  test('goes round a keep-out area with few bends', () => {
    const drawn: Drawn = [{ kind: 'keep-out', path: square(750, 30, 200) }]
    const { plan, route: round } = route([0, 0], [1500, 0], drawn)
    expect(met(plan, [0, 0], [1500, 0], round)).toEqual([])
    expect(round.bends.length).toBeLessThanOrEqual(4)
    // Round the two near corners, 170 m off the straight line: 1558 m and the breadth of a few cells.
    expect(round.mapM).toBeGreaterThan(2 * Math.hypot(550, 170) + 400 - 1)
    expect(round.mapM).toBeLessThan(2 * Math.hypot(550, 170) + 400 + 60)
  })

  test('goes round the end of a railway where that is the lesser trouble', () => {
    const drawn: Drawn = [
      {
        kind: 'railway',
        path: [
          [500, 60],
          [500, -4000],
        ],
      },
    ]
    const { plan, route: round } = route([0, 0], [1000, 0], drawn)
    expect(met(plan, [0, 0], [1000, 0], round)).toEqual([])
    const paid = route([0, 0], [1000, 0], drawn, { weights: { toll: { railway: 1 } } })
    expect(met(plan, [0, 0], [1000, 0], paid.route)).toEqual(['railway'])
  })

  test('keeps beside a track that goes its way', () => {
    const drawn: Drawn = [
      {
        kind: 'track',
        path: [
          [-500, 120],
          [2500, 120],
        ],
      },
    ]
    const weights = { near: { track: 0.5 }, toll: { track: 400 } }
    const { plan, route: along } = route([0, 0], [2000, 0], drawn, { weights })
    expect(met(plan, [0, 0], [2000, 0], along)).toEqual([])
    const norths = along.bends.map((bend) => metresOf(bend)[1])
    expect(Math.max(...norths)).toBeGreaterThan(80)
    expect(Math.max(...norths)).toBeLessThan(125)
  })

  test('goes round a hill rather than over it', () => {
    const hill = groundFromGrids([
      gridOver((e, n) => 400 * Math.exp(-((e - 750) ** 2 + (n - 20) ** 2) / 160_000), 20),
    ])
    const { route: round } = route([0, 0], [1500, 0], [], { ground: hill })
    const off = round.bends.map((bend) => Math.abs(metresOf(bend)[1]))
    expect(Math.max(...off)).toBeGreaterThan(250)
    expect(round.mapM).toBeGreaterThan(1550)
  })

  test('never enters what is barred, and never crosses more than the path did', () => {
    const random = seeded(77)
    const anywhere = (): Metres => [random() * 1600 - 100, random() * 1200 - 600]
    for (let run = 0; run < 40; run++) {
      const [from, to]: [Metres, Metres] = [
        [0, 0],
        [1400, 0],
      ]
      const strewn: Drawn = [
        ...Array.from({ length: 4 }, (): Drawn[number] => ({
          kind: 'keep-out',
          path: square(...anywhere(), 40 + random() * 140),
        })),
        { kind: 'road', path: [anywhere(), anywhere(), anywhere()] },
      ]
      const drawn = strewn.filter(({ kind, path }) => {
        const clear = (spot: Metres) => path.every(([e, n]) => Math.hypot(e - spot[0], n - spot[1]) > 260)
        return kind !== 'keep-out' || (clear(from) && clear(to))
      })
      const { plan, route: found } = route(from, to, drawn)
      expect(met(plan, from, to, found)).not.toContain('keep-out')
      // Bends cost no more than a few per cent over the path; the road is crossed at most as often as the straight line would.
      expect(found.bends.length).toBeLessThan(14)
    }
  })
})

test('a station in a keep-out area, and one walled in, are told in a sentence', () => {
  const inside = planOf(
    [
      [0, 0],
      [900, 0],
    ],
    ['surface'],
    [{ kind: 'keep-out', path: square(0, 0, 100) }],
  ).plan
  const ring: Metres[] = [
    [900, 120],
    [1020, 0],
    [900, -120],
    [780, 0],
    [900, 120],
  ]
  const walled = planOf(
    [
      [0, 0],
      [900, 0],
    ],
    ['surface'],
    [
      // A wall is a line: what it rings is free, and out of reach.
      { kind: 'keep-out', path: ring.slice(0, -1) },
      { kind: 'keep-out', path: [ring[3]!, ring[4]!] },
    ],
  ).plan
  const ask = (plan: Plan, from: Position, to: Position) => {
    const result = suggestRoute({ from, to, hazards: [...plan.hazards.values()], mostCells: 40_000 })
    return result?.ok === false ? result.problems[0]!.message : 'a route'
  }
  expect(ask(inside, at([0, 0]), at([900, 0]))).toMatch(/starts inside or at the edge of a keep-out area/)
  expect(ask(walled, at([0, 0]), at([900, 0]))).toMatch(/No route leads there/)
  expect(ask(walled, at([0, 0]), at([700, 300]))).toBe('a route')
})

test('a search that is stopped gives nothing', () => {
  const stopped = suggestRoute({ from: at([0, 0]), to: at([900, 0]), hazards: [] }, undefined, {
    shouldStop: () => true,
  })
  expect(stopped).toBeUndefined()
})

test('a walk over cells shares a side at every step, and its parts are the whole', () => {
  const random = seeded(5)
  for (let run = 0; run < 300; run++) {
    const end = () => [random() * 20, random() * 20] as const
    const [a, b] = [end(), end()]
    const cells: [number, number][] = []
    let sum = 0
    walkCells(a, b, (column, row, part) => {
      cells.push([column, row])
      sum += part
    })
    expect(sum).toBeCloseTo(1, 9)
    expect(cells[0]).toEqual([Math.floor(a[0]), Math.floor(a[1])])
    expect(cells.at(-1)).toEqual([Math.floor(b[0]), Math.floor(b[1])])
    for (let i = 1; i < cells.length; i++) {
      expect(Math.abs(cells[i]![0] - cells[i - 1]![0]) + Math.abs(cells[i]![1] - cells[i - 1]![1])).toBe(1)
    }
  }
})
