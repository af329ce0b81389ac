import { kruskal } from 'kruskal-mst'
import { describe, expect, test } from 'vitest'
import type { StationId } from '../../src/plan/id'
import { type CostMatrix, closedRing, type Link, spanningTree, star } from '../../src/route/net-shapes'
import { suggestNets } from '../../src/route/suggest-nets'
import { at, type Metres, planOf } from '../terrain/made-plan'
import { seeded } from '../terrain/seeded'

function randomCosts(random: () => number, size: number): number[][] {
  const costs = Array.from({ length: size }, () => new Array<number>(size).fill(0))
  for (let i = 0; i < size; i++) {
    for (let j = 0; j < i; j++) costs[i]![j] = costs[j]![i] = 10 + Math.floor(random() * 1000)
  }
  return costs
}
const sum = (costs: CostMatrix, links: readonly Link[]) =>
  links.reduce((total, [a, b]) => total + costs[a]![b]!, 0)

test('a spanning tree costs what Kruskal’s of a general-purpose library does, on 200 random nets', () => {
  const random = seeded(2)
  for (let run = 0; run < 200; run++) {
    const size = 2 + Math.floor(random() * 20)
    const costs = randomCosts(random, size)
    const edges = costs.flatMap((row, from) => row.slice(0, from).map((weight, to) => ({ from, to, weight })))
    const reference = kruskal(edges).reduce((total, { weight }) => total + weight, 0)
    const tree = spanningTree(costs)!
    expect(tree).toHaveLength(size - 1)
    expect(sum(costs, tree)).toBe(reference)
  }
})

describe('a closed ring', () => {
  const orders = (places: readonly number[]): number[][] =>
    places.length <= 1
      ? [[...places]]
      : places.flatMap((place) =>
          orders(places.filter((other) => other !== place)).map((rest) => [place, ...rest]),
        )
  const length = (costs: CostMatrix, order: readonly number[]) =>
    order.reduce((total, place, i) => total + costs[place]![order[(i + 1) % order.length]!]!, 0)

  test('of up to seven places is the cheapest of all rings, each tried', () => {
    const random = seeded(9)
    for (let run = 0; run < 40; run++) {
      const size = 3 + (run % 5)
      const costs = randomCosts(random, size)
      const rest = Array.from({ length: size - 1 }, (_, i) => i + 1)
      const cheapest = Math.min(...orders(rest).map((order) => length(costs, [0, ...order])))
      expect(sum(costs, closedRing(costs)!)).toBe(cheapest)
    }
  })

  test('of many places passes each once, and two lines of it never change places for the better', () => {
    const random = seeded(4)
    const places = Array.from({ length: 24 }, () => [random() * 1000, random() * 1000] as const)
    const costs = places.map(([x, y]) => places.map(([u, v]) => Math.hypot(x - u, y - v)))
    const ring = closedRing(costs)!
    expect(new Set(ring.map(([from]) => from)).size).toBe(24)
    expect(new Set(ring.map(([, to]) => to)).size).toBe(24)
    for (const [a, b] of ring) {
      for (const [c, d] of ring) {
        if (a === c) continue
        expect(costs[a]![c]! + costs[b]![d]!).toBeGreaterThanOrEqual(costs[a]![b]! + costs[c]![d]! - 1e-6)
      }
    }
  })

  test('needs three places, and a way round', () => {
    expect(closedRing(randomCosts(seeded(1), 2))).toBeUndefined()
    const cut = [
      [0, 1, Infinity],
      [1, 0, Infinity],
      [Infinity, Infinity, 0],
    ]
    expect(closedRing(cut)).toBeUndefined()
    expect(spanningTree(cut)).toBeUndefined()
    expect(star(cut, 0)).toBeUndefined()
  })
})

describe('suggested nets', () => {
  const spots: Metres[] = [
    [0, 0],
    [1000, 0],
    [1000, 900],
    [0, 900],
    [500, 450],
  ]
  const stations = spots.map((spot, i) => ({ id: `s${i}` as StationId, name: `S${i}`, position: at(spot) }))
  const wall = planOf(
    [
      [0, 0],
      [1, 1],
    ],
    ['surface'],
    [
      {
        kind: 'keep-out',
        path: [
          [450, -50],
          [450, 480],
        ],
      },
    ],
  ).plan
  const ask = (hazards = [...wall.hazards.values()], hub?: StationId) => {
    const result = suggestNets({ stations, hazards, mostCells: 20_000, ...(hub && { hub }) })
    if (!result?.ok) throw new Error(JSON.stringify(result))
    return result.value
  }

  test('are a tree, a star and a ring, and the tree takes the least wire', () => {
    const [tree, spokes, ring] = ask([])
    expect([tree!.shape, spokes!.shape, ring!.shape]).toEqual(['tree', 'star', 'ring'])
    expect([tree!.links.length, spokes!.links.length, ring!.links.length]).toEqual([4, 4, 5])
    // Four lines from the middle, each √(500² + 450²).
    expect(tree!.mapM).toBeCloseTo(4 * Math.hypot(500, 450), -1)
    expect(spokes!.links.every(({ from, to }) => from === 's4' || to === 's4')).toBe(true)
    expect(ring!.mapM).toBeGreaterThan(tree!.mapM)
  })

  test('the star stands where the supply does', () => {
    const spokes = ask([], 's0' as StationId).find(({ shape }) => shape === 'star')!
    expect(spokes.links.every(({ from, to }) => from === 's0' || to === 's0')).toBe(true)
  })

  test('go round what is barred', () => {
    const tree = ask()[0]!
    expect(tree.mapM).toBeGreaterThan(ask([])[0]!.mapM - 1)
    const blocked = tree.links.filter(({ bends }) => bends.length > 0)
    expect(blocked.length).toBeGreaterThan(0)
  })

  test('of one station, and to one walled in, end in a sentence', () => {
    expect(suggestNets({ stations: stations.slice(0, 1), hazards: [] })).toMatchObject({ ok: false })
    const ring: Metres[] = [
      [400, 450],
      [500, 350],
      [600, 450],
      [500, 550],
    ]
    const closed = planOf(
      [
        [0, 0],
        [1, 1],
      ],
      ['surface'],
      [
        { kind: 'keep-out', path: ring },
        { kind: 'keep-out', path: [ring[3]!, ring[0]!] },
      ],
    ).plan
    const result = suggestNets({ stations, hazards: [...closed.hazards.values()], mostCells: 20_000 })
    expect(result?.ok === false && result.problems[0]!.message).toBe(
      'No route leads to S4: keep-out areas close it off.',
    )
  })

  test('that are stopped are none', () => {
    expect(suggestNets({ stations, hazards: [] }, undefined, { shouldStop: () => true })).toBeUndefined()
  })
})
