import fc from 'fast-check'
import { kruskal } from 'kruskal-mst'
import { expect, test } from 'vitest'
import { shelfOf } from '../../src/files/parse-shelf'
import { pathM } from '../../src/geo/leg-length'
import { countryOf } from '../../src/shelf/country'
import { leastWireM } from '../../src/shelf/least-wire'
import { bendsFor, madeUpPlaces } from '../../src/shelf/made-up-places'
import { everyPartition, everyRing, everyTree } from '../../src/shelf/net-shapes'
import { splitWay, type Way, wayAlong } from '../../src/shelf/ways'
import { randomShelf } from './random-shelf'

const places = (count: number) => Array.from({ length: count }, (_, p) => p)

/** Cayley: n^(n − 2) trees join n places. A. Cayley, A theorem on trees, Quarterly Journal of Mathematics 23 (1889), p. 376. */
test.each([2, 3, 4, 5, 6])('every tree between %i places is there once, and joins them all', (count) => {
  const trees = [...everyTree(places(count))].map((edges) =>
    edges
      .map((each) => each.join('-'))
      .toSorted()
      .join(' '),
  )
  expect(new Set(trees).size).toBe(count ** (count - 2))
  expect(trees).toHaveLength(count ** (count - 2))
  for (const edges of everyTree(places(count))) {
    // A spanning tree of these edges alone, by another library, takes all of them.
    expect(kruskal(edges.map(([a, b]) => ({ from: `${a}`, to: `${b}`, weight: 1 })))).toHaveLength(count - 1)
  }
})

/** (n − 1)! / 2 rings. */
test.each([
  [3, 1],
  [4, 3],
  [5, 12],
  [6, 60],
])('%i places have %i closed rings', (count, rings) => {
  expect(
    new Set(
      [...everyRing(places(count))].map((edges) =>
        edges
          .map((each) => each.join('-'))
          .toSorted()
          .join(' '),
      ),
    ).size,
  ).toBe(rings)
})

/** Partitions with no part of one: 1, 1, 4, 11, 41 for 2 to 6. OEIS A000296. */
test.each([
  [2, 1],
  [3, 1],
  [4, 4],
  [5, 11],
  [6, 41],
])('%i places share %i sets of circuits where nobody must talk', (count, ways) => {
  expect(everyPartition(count, [])).toHaveLength(ways)
})

test('those who talk share a circuit', () => {
  expect(everyPartition(4, [[0, 1]])).toEqual([
    [[0, 1, 2, 3]],
    [
      [0, 1],
      [2, 3],
    ],
  ])
})

test('ways between made-up places are as long as was typed, whatever was typed', () => {
  fc.assert(
    fc.property(
      fc
        .integer({ min: 2, max: 7 })
        .chain((count) =>
          fc.tuple(
            fc.constant(count),
            fc.array(fc.integer({ min: 20, max: 20_000 }), { minLength: 21, maxLength: 21 }),
          ),
        ),
      ([count, drawn]) => {
        let next = 0
        const m = Array.from({ length: count }, () => new Array<number>(count).fill(0))
        for (let a = 0; a < count; a++)
          for (let b = a + 1; b < count; b++) {
            m[a]![b] = drawn[next++]!
            m[b]![a] = m[a]![b]!
          }
        const at = madeUpPlaces(m)
        for (let a = 0; a < count; a++)
          for (let b = a + 1; b < count; b++) {
            const alongM = pathM([at[a]!, ...bendsFor(at[a]!, at[b]!, m[a]![b]!), at[b]!])
            // Positions are held to a centimetre: two ends and a bend.
            expect(Math.abs(alongM - m[a]![b]!)).toBeLessThan(0.03)
          }
      },
    ),
    { numRuns: 60 },
  )
})

test('distances of a plane are met by straight lines', () => {
  const at = madeUpPlaces([
    [0, 300, 500],
    [300, 0, 400],
    [500, 400, 0],
  ])
  expect(bendsFor(at[0]!, at[1]!, 300)).toEqual([])
  expect(bendsFor(at[0]!, at[2]!, 500)).toEqual([])
})

test('the first part of a way that is split takes no more wire than it is given, and hardly less', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.1, max: 0.9, noNaN: true }),
      fc.double({ min: -0.02, max: 0.02, noNaN: true }),
      (share, aside) => {
        const way = wayAlong({
          from: [9, 47],
          to: [9.02, 47.01],
          bends: [[9.01, 47 + aside]],
          lays: ['surface', 'overhead'],
        })
        const wireM = way.wireM * share
        const [near, far] = splitWay(way, wireM)!
        expect(near.wireM).toBeLessThanOrEqual(wireM)
        expect(near.wireM).toBeGreaterThan(wireM - 0.1)
        // Two tails more than the whole.
        expect(near.wireM + far.wireM).toBeCloseTo(way.wireM + 16, 0)
      },
    ),
  )
})

test('no net takes less wire than the spanning tree that another library finds, or √3/2 of its metres where joints are free', () => {
  let open = 0
  for (let seed = 1; seed <= 20; seed++) {
    const shelf = shelfOf({ ...randomShelf(seed, { places: 7, things: 9, spreadM: 2000 }), talk: 'all' })
    if (!shelf.ok) throw new Error(JSON.stringify(shelf.problems))
    const country = countryOf(shelf.value)
    const treeOf = (of: (way: Way) => number) =>
      kruskal(
        places(7).flatMap((a) =>
          places(7)
            .slice(a + 1)
            .map((b) => ({ from: `${a}`, to: `${b}`, weight: of(country.way(a, b)) })),
        ),
      ).reduce((sum, { weight }) => sum + Number(weight), 0)
    const theirs = treeOf(({ wireM }) => wireM)
    if (country.isMadeUp) {
      expect(leastWireM(country)).toBeCloseTo(theirs, 6)
      continue
    }
    open++
    // A fifth of slack, and 8 m at each end of seven lines: PLAN-FORMAT, section 1.
    const joinedM = (Math.sqrt(3) / 2) * treeOf(({ mapM }) => mapM) * 1.2 + 7 * 16
    expect(leastWireM(country)).toBeCloseTo(Math.min(theirs, joinedM), 6)
  }
  expect(open).toBeGreaterThan(3)
})
