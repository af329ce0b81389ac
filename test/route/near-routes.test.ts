import Graph from 'graphology'
import { dijkstra } from 'graphology-shortest-path'
import highsLoader from 'highs'
import { beforeAll, describe, expect, test } from 'vitest'
import type { Position } from '../../src/geo/position'
import type { StationId } from '../../src/plan/id'
import type { HazardKind } from '../../src/plan/plan'
import { stepCost, stepsOn } from '../../src/route/cost-grid'
import { nearRoutes } from '../../src/route/near-routes'
import { routeGround } from '../../src/route/route-ground'
import { DEFAULT_ROUTE_WEIGHTS } from '../../src/route/route-weights'
import { suggestNets } from '../../src/route/suggest-nets'
import type { Solver } from '../materials/milp-oracle'
import { isInArea } from '../terrain/in-area'
import { metresOf } from '../terrain/made-ground'
import { at, type Metres, planOf } from '../terrain/made-plan'
import { seeded } from '../terrain/seeded'

type Drawn = readonly { readonly kind: HazardKind; readonly path: readonly Metres[] }[]

const hazardsOf = (drawn: Drawn) => [
  ...planOf(
    [
      [0, 0],
      [1, 1],
    ],
    ['surface'],
    drawn,
  ).plan.hazards.values(),
]
const wall = (path: readonly Metres[]): Drawn[number] => ({ kind: 'keep-out', path })

function near(drawn: Drawn, sharePct: number, mostCells = 60_000) {
  const result = nearRoutes({ from: FROM, to: TO, hazards: hazardsOf(drawn), sharePct, mostCells })
  if (!result?.ok) throw new Error(JSON.stringify(result))
  return result.value
}

const FROM = at([0, 0])
const TO = at([1600, 0])

/** North and south of a wall with two gaps in it, the southern one out of the way. */
const TWO_GAPS: Drawn = [
  wall([
    [800, 3000],
    [800, 260],
  ]),
  wall([
    [800, 140],
    [800, -380],
  ]),
  wall([
    [800, -500],
    [800, -3000],
  ]),
]

describe('the corridor of near-best routes', () => {
  test('is where the two shortest paths of a graph library add up to no more than the share', () => {
    const drawn: Drawn = [
      ...TWO_GAPS,
      {
        kind: 'road',
        path: [
          [300, -900],
          [400, 900],
        ],
      },
    ]
    const hazards = hazardsOf(drawn)
    const mostCells = 1600
    const { corridor } = near(drawn, 12, mostCells)
    const { grid, toCells, toDeg, cellAt } = routeGround(
      [FROM, TO],
      hazards,
      DEFAULT_ROUTE_WEIGHTS,
      undefined,
      mostCells,
    )
    const steps = stepsOn(grid)
    const graph = new Graph({ type: 'directed' })
    for (let cell = 0; cell < grid.columns * grid.rows; cell++) graph.addNode(cell)
    for (let cell = 0; cell < grid.columns * grid.rows; cell++) {
      for (let m = 0; m < steps.count; m++) {
        const [column, row] = [
          (cell % grid.columns) + steps.dx[m]!,
          Math.floor(cell / grid.columns) + steps.dy[m]!,
        ]
        if (column < 0 || row < 0 || column >= grid.columns || row >= grid.rows) continue
        const weight = stepCost(grid, steps, cell, m)
        if (weight < Infinity) graph.addDirectedEdge(cell, row * grid.columns + column, { weight })
      }
    }
    const cost = (a: number, b: number) => {
      const path = dijkstra.bidirectional(graph, String(a), String(b), 'weight') ?? []
      return path.length === 0 && a !== b
        ? Infinity
        : path.reduce(
            (sum, node, i) => (i === 0 ? 0 : sum + graph.getEdgeAttribute(path[i - 1], node, 'weight')),
            0,
          )
    }
    const [start, goal] = [cellAt(toCells(FROM)), cellAt(toCells(TO))]
    const most = cost(start, goal) * 1.12
    const random = seeded(3)
    const seen = { inside: 0, outside: 0 }
    for (let run = 0; run < 15; run++) {
      const cell = cellAt(toCells(at([random() * 1800 - 100, random() * 1000 - 400])))
      const through = cost(start, cell) + cost(cell, goal)
      // Outlines run between the middles of cells: only what lies a cell's step off the limit is told for sure. An outline passes at most a step and a half from a cell.
      if (Math.abs(through - most) < 1.5 * grid.cellM) continue
      const middle = toDeg([(cell % grid.columns) + 0.5, Math.floor(cell / grid.columns) + 0.5])
      expect(isInArea(corridor, middle as Position)).toBe(through < most)
      seen[through < most ? 'inside' : 'outside']++
    }
    expect(seen.inside).toBeGreaterThan(2)
    expect(seen.outside).toBeGreaterThan(2)
  })
})

/** Where a way crosses the wall, m north. */
function crossingOf(bends: readonly Position[]): number {
  const points: readonly (readonly number[])[] = [[0, 0], ...bends.map(metresOf), [1600, 0]]
  for (let i = 0; i + 1 < points.length; i++) {
    const [[ax, ay], [bx, by]] = [points[i] as unknown as Metres, points[i + 1] as unknown as Metres]
    if (ax <= 800 && bx > 800) return ay + ((800 - ax) / (bx - ax)) * (by - ay)
  }
  return Number.NaN
}

describe('other ways', () => {
  test('lead through the other gap, within the share, and apart as told', () => {
    const { routes, apartM } = near(TWO_GAPS, 30)
    expect(routes.length).toBeGreaterThanOrEqual(2)
    const crossings = routes.map(({ bends }) => crossingOf(bends))
    expect(crossings[0]).toBeGreaterThan(140)
    expect(crossings[0]).toBeLessThan(260)
    expect(crossings.some((north) => north < -380 && north > -500)).toBe(true)
    for (const route of routes) {
      expect(route.cost).toBeLessThanOrEqual(routes[0]!.cost * 1.3)
      const own = sampled(route.bends)
      for (const other of routes) {
        if (other === route) continue
        const theirs = sampled(other.bends)
        const apart = own.filter((a) =>
          theirs.every((b) => Math.hypot(a[0] - b[0], a[1] - b[1]) >= apartM),
        ).length
        // Looked at every 5 m: a look or two more or less at each change.
        expect(apart / own.length).toBeGreaterThan(0.5 - 0.02)
      }
    }
  })

  test('are none where the only gap is the same for all and the share is small', () => {
    const one: Drawn = [
      wall([
        [800, 3000],
        [800, 40],
      ]),
      wall([
        [800, -40],
        [800, -3000],
      ]),
    ]
    const { routes } = near(one, 1)
    expect(routes).toHaveLength(1)
  })

  test('a stop ends it, and a barred end is a sentence', () => {
    const request = { from: FROM, to: TO, hazards: [], sharePct: 10 }
    expect(nearRoutes(request, undefined, { shouldStop: () => true })).toBeUndefined()
    const pit = wall([
      [1500, -100],
      [1700, -100],
      [1700, 100],
      [1500, 100],
      [1500, -100],
    ])
    expect(nearRoutes({ ...request, hazards: hazardsOf([pit]) })).toMatchObject({ ok: false })
  })
})

function sampled(
  bends: readonly Position[],
  ends: readonly [Metres, Metres] = [
    [0, 0],
    [1600, 0],
  ],
): Metres[] {
  const points = [ends[0], ...bends.map((bend) => metresOf(bend) as Metres), ends[1]]
  return points.slice(1).flatMap((to, i) => {
    const from = points[i]!
    const count = Math.max(1, Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / 5))
    return Array.from(
      { length: count },
      (_, k): Metres => [
        from[0] + ((to[0] - from[0]) * k) / count,
        from[1] + ((to[1] - from[1]) * k) / count,
      ],
    )
  })
}

describe('a ring against a single break', () => {
  let solver: Solver
  beforeAll(async () => {
    solver = (await highsLoader()) as unknown as Solver
  })
  const SPOTS: readonly Metres[] = [
    [0, 0],
    [1600, 0],
    [800, 700],
  ]
  const stations = SPOTS.map((spot, i) => ({ id: `s${i}` as StationId, name: `S${i}`, position: at(spot) }))
  const ringOver = (drawn: Drawn) => {
    const result = suggestNets({ stations, hazards: hazardsOf(drawn), mostCells: 60_000 })
    if (!result?.ok) throw new Error(JSON.stringify(result))
    return result.value.find(({ shape }) => shape === 'ring')!
  }
  // Camp in the west, the two others east of a wall: both lines to it must come through the wall.
  const beyond = (gaps: readonly (readonly [number, number])[]): Drawn => {
    const sorted = [...gaps].sort((a, b) => b[1] - a[1])
    const tops = [3000, ...sorted.map(([south]) => south)]
    return tops.map((top, i) =>
      wall([
        [300, top],
        [300, sorted[i]?.[1] ?? -3000],
      ]),
    )
  }

  /** How many ways 50 m wide lead from the first station to the second over the ground: max-flow with one way through each cell of 50 m. */
  function flowBetween(gaps: readonly (readonly [number, number])[]): number {
    const SIDE = 50
    const [columns, rows] = [46, 60]
    const cellOf = ([e, n]: Metres) => [Math.floor((e + 300) / SIDE), Math.floor((n + 1500) / SIDE)] as const
    const isWall = (c: number, r: number) => {
      const north = r * SIDE - 1500
      return c === cellOf([300, 0])[0] && !gaps.some(([a, b]) => north + SIDE / 2 > a && north + SIDE / 2 < b)
    }
    const arcs: string[] = []
    const into = new Map<number, string[]>()
    const out = new Map<number, string[]>()
    const put = (map: Map<number, string[]>, key: number, name: string) =>
      map.set(key, [...(map.get(key) ?? []), name])
    for (let r = 0; r < rows; r++)
      for (let c = 0; c < columns; c++)
        for (const [dc, dr] of [
          [1, 0],
          [-1, 0],
          [0, 1],
          [0, -1],
        ] as const) {
          const [c2, r2] = [c + dc, r + dr]
          if (c2 < 0 || r2 < 0 || c2 >= columns || r2 >= rows || isWall(c, r) || isWall(c2, r2)) continue
          const name = `f_${c}_${r}_${c2}_${r2}`
          arcs.push(name)
          put(out, r * columns + c, name)
          put(into, r2 * columns + c2, name)
        }
    const ends = [SPOTS[0]!, SPOTS[1]!].map((spot) => {
      const [c, r] = cellOf(spot)
      return r * columns + c
    })
    const constraints: string[] = []
    for (let cell = 0; cell < columns * rows; cell++) {
      const [a, b] = [into.get(cell) ?? [], out.get(cell) ?? []]
      if (ends.includes(cell) || a.length === 0) continue
      constraints.push(`${a.join(' + ')} - ${b.join(' - ')} = 0`, `${a.join(' + ')} <= 1`)
    }
    const source = out.get(ends[0]!)!
    const back = into.get(ends[0]!)!
    const problem = `Maximize\n obj: ${source.join(' + ')} - ${back.join(' - ')}\nSubject To\n${constraints.map((row, i) => ` r${i}: ${row}`).join('\n')}\nBounds\n${arcs.map((arc) => ` 0 <= ${arc} <= 1`).join('\n')}\nEnd`
    return Math.round(solver.solve(problem).ObjectiveValue)
  }

  test.each([
    { what: 'one gap of 40 m', gaps: [[-20, 20]], ways: 1 },
    {
      what: 'two gaps',
      gaps: [
        [-20, 20],
        [380, 420],
      ],
      ways: 2,
    },
  ] as const)(
    'through $what keeps its ways apart where the ground lets it, and names what they share where not',
    ({ gaps, ways }) => {
      const flow = flowBetween(gaps.map(([a, b]) => [a - 5, b + 15] as const))
      expect(flow).toBe(ways)
      const ring = ringOver(beyond(gaps))
      const { close, apartM } = ring.apart!
      expect(apartM).toBe(50)
      if (flow >= 2) expect(close).toEqual([])
      else {
        expect(close.length).toBeGreaterThan(0)
        const [east, north] = metresOf(close[0]!.at)
        expect(Math.hypot(east - 300, north)).toBeLessThan(120)
        expect(close[0]!.lines.every(({ from, to }) => from === 's0' || to === 's0')).toBe(true)
      }
      // The same by looks every 5 m along the lines as drawn, far from the stations at which two of them end.
      const drawn = ring.links.map(({ from, to, bends }) => ({
        from,
        to,
        looks: sampled(bends, [SPOTS[Number(from[1])]!, SPOTS[Number(to[1])]!]),
      }))
      const isClose = drawn.some((own) =>
        drawn.some((other) => {
          if (other === own) return false
          const common = SPOTS.filter(
            (_, i) =>
              [own.from, own.to].includes(`s${i}` as StationId) &&
              [other.from, other.to].includes(`s${i}` as StationId),
          )
          return own.looks.some(
            ([e, n]) =>
              common.every(([x, y]) => Math.hypot(e - x, n - y) > 3 * apartM + 10) &&
              other.looks.some(([x, y]) => Math.hypot(e - x, n - y) < apartM - 5),
          )
        }),
      )
      expect(isClose).toBe(flow < 2)
    },
  )
})
