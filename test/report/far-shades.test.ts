import Graph from 'graphology'
import { dijkstra } from 'graphology-shortest-path'
import { describe, expect, test } from 'vitest'
import type { Position } from '../../src/geo/position'
import { measurePlan } from '../../src/measure/measure-line'
import { type Further, withFurther } from '../../src/plan/further-line'
import type { CircuitId, StationId } from '../../src/plan/id'
import type { Plan } from '../../src/plan/plan'
import { besideReport } from '../../src/report/beside-report'
import { coveredM, type FarFound, farShades } from '../../src/report/far-shades'
import type { FarLimit } from '../../src/report/further-set'
import { furthestM } from '../../src/report/further-set'
import { reportPlan } from '../../src/report/report-plan'
import { wireField } from '../../src/route/wire-field'
import { groundFromGrids } from '../../src/terrain/ground-from-grids'
import { isInArea } from '../terrain/in-area'
import { gridOver, metresOf } from '../terrain/made-ground'
import { at, type Metres, planOf } from '../terrain/made-plan'
import { seeded } from '../terrain/seeded'

const [ASH, BIRCH] = ['a', 'b'] as unknown as readonly [StationId, StationId]
const WIRE = 'bell-wire-0-2'
const IDS = { station: 'far', line: 'far-line', circuit: 'far-net' } as unknown as Further['ids']

const WALL: readonly Metres[] = [
  [-900, 150],
  [500, 150],
  [500, 260],
  [-900, 260],
  [-900, 150],
]

/** Two sound-powered telephones, a line of thin wire between them, a walled field to the north. */
function party(set: string): Plan {
  const { plan, line } = planOf(
    [
      [0, 0],
      [-2300, -900],
    ],
    ['surface'],
    [{ kind: 'keep-out', path: WALL }],
  )
  const wired = { ...line, wire: WIRE }
  return {
    ...plan,
    lines: new Map([[line.id, wired]]),
    circuits: new Map([
      [
        'c' as CircuitId,
        {
          id: 'c' as CircuitId,
          name: 'Party',
          lines: [line.id],
          sets: new Map([ASH, BIRCH].map((station) => [station, set])),
          supply: null,
        },
      ],
    ]),
  }
}

const furtherTo = (plan: Plan, set: string, wire: string, to: Position, bends: readonly Position[] = []) =>
  withFurther(plan, {
    ...{ from: ASH, circuit: 'c' as CircuitId, name: 'Elm', to, bends, wire, set },
    ...{ supply: null, lay: 'surface', ids: IDS },
  })

const hills = groundFromGrids([
  gridOver((e, n) => 300 + 60 * Math.sin(e / 300) * Math.cos(n / 260), 20, { sideM: 8000 }),
])

describe('the shades of how far a further telephone could stand', () => {
  const set = 'sound-powered'
  const wire = WIRE
  const plan = party(set)
  const drawn = furtherTo(plan, set, wire, at([10, 10]))
  const measured = measurePlan(drawn, hills)
  const question = { plan: drawn, line: IDS.line, measured, from: at([0, 0]), laidM: 0 }
  const found = farShades(question, hills, () => undefined)
  const holdsOf: Readonly<Record<Exclude<FarLimit, 'stock'>, (own: Plan) => boolean>> = {
    today: (own) => reportPlan(own, hills).circuits[0]!.verdict !== 'fails',
    worst: (own) => reportPlan(own, hills).circuits[0]!.worst.verdict !== 'fails',
    nine: (own) => {
      const lengths = measurePlan(own, hills)
      const circuit = reportPlan(own, hills).circuits[0]!
      return besideReport(own, circuit, lengths, { samples: 200, seed: 1 })!.odds!.worst.works >= 0.9
    },
  }

  test('lie within each other, and are drawn for the figures that are told', () => {
    expect(found.shades.map(({ limit }) => limit)).toEqual(['today', 'worst', 'nine'])
    const { today, worst, nine } = found.limitsM
    expect(today!).toBeGreaterThan(worst!)
    expect(worst!).toBeGreaterThan(nine!)
    expect(nine!).toBeGreaterThan(0)
  })

  test.each(['today', 'worst', 'nine'] as const)(
    'inside %s the report says that it works, outside that it fails, at places drawn at random',
    (limit) => {
      const limitM = found.limitsM[limit]!
      const reachM = coveredM(plan, 'surface', limitM)
      const { area } = found.shades.find((each) => each.limit === limit)!
      const field = wireField(at([0, 0]), reachM * 1.3, [...plan.hazards.values()], hills, 40_000)!
      const { cellM, columns } = field.country.grid
      const random = seeded(11)
      const seen = { inside: 0, outside: 0 }
      for (let run = 0; run < (limit === 'nine' ? 10 : 40); run++) {
        const place = at([(random() * 2 - 1) * reachM * 1.25, (random() * 2 - 1) * reachM * 1.25])
        const cell = field.country.cellAt(field.country.toCells(place))
        if (field.groundM[cell] === Infinity) {
          expect(isInArea(area, place)).toBe(false)
          continue
        }
        const own = furtherTo(plan, set, wire, place, field.bendsTo(cell))
        const wireM = measurePlan(own, hills).get(IDS.line)!.wireM
        // A cell's middle is off the place by up to 0.7 of its side, and each outline runs straight between two middles.
        const toleranceM = 1.2 * (1.5 * cellM + found.cellM) + 0.01 * limitM
        if (Math.abs(wireM - limitM) < toleranceM) continue
        const holds = holdsOf[limit](own)
        expect({ place: metresOf(place), wireM, holds }).toEqual({
          place: metresOf(place),
          wireM,
          holds: isInArea(area, place),
        })
        seen[holds ? 'inside' : 'outside']++
      }
      expect(columns).toBeGreaterThan(100)
      expect(seen.inside).toBeGreaterThan(2)
      expect(seen.outside).toBeGreaterThan(2)
    },
  )

  test('end where the tails leave no more wire', () => {
    const tailM = 400
    const tailed = { ...plan, hazards: new Map(), allowances: { ...plan.allowances, tailM } }
    const own = furtherTo(tailed, set, wire, at([10, 10]))
    const coarse: FarFound[] = []
    const stop = new Error('the first news are enough')
    const first = () =>
      farShades({ ...question, plan: own, measured: measurePlan(own) }, undefined, (news) => {
        coarse.push(news)
        throw stop
      })
    expect(first).toThrow(stop)
    const { shades, limitsM, cellM } = coarse[0]!
    const { area } = shades.find(({ limit }) => limit === 'today')!
    const endM = coveredM(tailed, 'surface', limitsM.today! - 2 * tailM)
    // Half of what the tails take, so that an outline that forgets them is missed; cells are finer than that.
    expect(cellM).toBeLessThan(tailM / 2)
    expect(isInArea(area, at([0, -(endM - tailM)]))).toBe(true)
    expect(isInArea(area, at([0, -(endM + tailM)]))).toBe(false)
  })

  test('told in wire, they are the lengths up to which the report holds, to a third of a hundredth', () => {
    for (const limit of ['today', 'worst'] as const) {
      const limitM = furthestM({ ...question, measured: measurePlan(drawn) }, limit)
      const off = (wireM: number) => {
        // A straight line over flat ground, as long as that wire covers.
        const own = furtherTo(plan, set, wire, at([0, -coveredM(plan, 'surface', wireM - 16)]))
        const { circuits } = reportPlan(own)
        return (limit === 'today' ? circuits[0]!.verdict : circuits[0]!.worst.verdict) === 'fails'
      }
      expect(off(limitM * 0.997)).toBe(false)
      expect(off(limitM * 1.005)).toBe(true)
    }
  })

  test('with a stock, the wire runs out where the report finds it short', () => {
    const stocked: Plan = { ...plan, stock: [{ wire, lengthM: 1000, count: 5 }] }
    const own = furtherTo(stocked, set, wire, at([10, 10]))
    const limitM = furthestM({ ...question, plan: own, measured: measurePlan(own) }, 'stock')
    const isShort = (wireM: number) => {
      const to = furtherTo(stocked, set, wire, at([0, -coveredM(plan, 'surface', wireM - 16)]))
      return reportPlan(to).cautions.some(({ code }) => code === 'stock-short')
    }
    expect(limitM).toBeGreaterThan(100)
    expect(isShort(limitM - 2)).toBe(false)
    expect(isShort(limitM + 3)).toBe(true)
  })
})

test('ways round walls are as long as the shortest over their corners, by a graph library', () => {
  const random = seeded(5)
  const block = (e: number, n: number, half: number): Metres[] => [
    [e - half, n - half],
    [e + half, n - half],
    [e + half, n + half],
    [e - half, n + half],
  ]
  const blocks = [block(300, 100, 150), block(-350, 250, 180), block(0, -400, 120)]
  const hazards = planOf(
    [
      [0, 0],
      [1, 1],
    ],
    ['surface'],
    blocks.map((ring) => ({ kind: 'keep-out', path: [...ring, ring[0]!] })),
  ).plan.hazards
  const field = wireField(at([0, 0]), 900, [...hazards.values()] as never, undefined, 40_000)!
  const { cellM } = field.country.grid
  const corners = blocks.flat()
  /** Whether a straight stretch passes through the inside of a block. */
  const meets = ([ax, ay]: Metres, [bx, by]: Metres) =>
    blocks.some((ring) => {
      const [[west, south], , [east, north]] = ring as [Metres, Metres, Metres]
      let [from, to] = [0, 1]
      for (const [start, delta, low, high] of [
        [ax, bx - ax, west, east],
        [ay, by - ay, south, north],
      ] as const) {
        if (delta === 0) {
          if (start <= low || start >= high) return false
          continue
        }
        const [p, q] = [(low - start) / delta, (high - start) / delta]
        from = Math.max(from, Math.min(p, q))
        to = Math.min(to, Math.max(p, q))
      }
      return to - from > 1e-9
    })
  for (let run = 0; run < 60; run++) {
    const wanted: Metres = [(random() * 2 - 1) * 880, (random() * 2 - 1) * 880]
    const cell = field.country.cellAt(field.country.toCells(at(wanted)))
    if (field.groundM[cell] === Infinity) continue
    const { columns } = field.country.grid
    const goal = metresOf(
      field.country.toDeg([(cell % columns) + 0.5, Math.floor(cell / columns) + 0.5]),
    ) as Metres
    const points: Metres[] = [[0, 0], goal, ...corners]
    const graph = new Graph({ type: 'undirected' })
    for (const i of points.keys()) graph.addNode(i)
    for (const [i, a] of points.entries())
      for (const [j, b] of points.entries())
        if (j > i && !meets(a, b)) graph.addEdge(i, j, { weight: Math.hypot(a[0] - b[0], a[1] - b[1]) })
    const way = dijkstra.bidirectional(graph, '0', '1', 'weight')
    if (!way) continue
    const exactM = way.reduce(
      (sum, node, i) =>
        i === 0 ? 0 : sum + (graph.getEdgeAttribute(graph.edge(way[i - 1], node), 'weight') as number),
      0,
    )
    // Blocks are drawn as whole cells, so each corner is passed up to two cells farther out; ways never come out shorter than they can be.
    expect(field.groundM[cell]! / exactM).toBeGreaterThan(0.999)
    expect(field.groundM[cell]!).toBeLessThan(exactM * 1.012 + (way.length - 2) * 3 * cellM)
  }
})
