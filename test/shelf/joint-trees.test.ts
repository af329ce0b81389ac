import fc from 'fast-check'
import { kruskal } from 'kruskal-mst'
import { expect, test } from 'vitest'
import { shelfOf } from '../../src/files/parse-shelf'
import { fermatPoint } from '../../src/geo/fermat'
import { type PlanePoint, planeAbout } from '../../src/geo/plane'
import { reportPlan } from '../../src/report/report-plan'
import { countryOf } from '../../src/shelf/country'
import { jointTrees } from '../../src/shelf/joint-trees'
import { shelfAnswer } from '../../src/shelf/shelf-answer'
import { answerInWords } from '../../src/words/json-shelf'
import { cases } from '../cases'

const apart = ([ax, ay]: PlanePoint, [bx, by]: PlanePoint) => Math.hypot(ax - bx, ay - by)
const MIDDLE = planeAbout([[9, 47]])

const countryAt = (points: readonly PlanePoint[]) => {
  const shelf = shelfOf({
    places: points.map((point, k) => {
      const [lon, lat] = MIDDLE.toPosition(point)
      return { id: `p${k}`, lon, lat }
    }),
    have: {
      wires: [{ wire: 'wd-1a', lengthM: 1609, count: 20 }],
      sets: [{ set: 'crank-1600', count: points.length }],
    },
  })
  if (!shelf.ok) throw new Error(JSON.stringify(shelf.problems))
  return countryOf(shelf.value)
}

/** The least metres on the map of any tree, with joints in the open or without. */
function leastMapM(points: readonly PlanePoint[]) {
  const country = countryAt(points)
  const plane = (place: number) => MIDDLE.toPlane(country.positionOf(place))
  const all = points.map((_, k) => k)
  const tree = kruskal(
    all.flatMap((a) =>
      all.slice(a + 1).map((b) => ({ from: `${a}`, to: `${b}`, weight: apart(points[a]!, points[b]!) })),
    ),
  ).reduce((sum, { weight }) => sum + Number(weight), 0)
  const joined = [...jointTrees(country, all)].map((edges) =>
    edges.reduce((sum, [a, b]) => sum + apart(plane(a), plane(b)), 0),
  )
  return { tree, least: Math.min(tree, ...joined) }
}

/** A position is held to a centimetre: each end of each line. */
const CLOSE_M = 0.1
/** A joint that saves less than it is worth is not thought of: 50 m of wire for each of up to two, a fifth of it slack, two tails more. */
const FORGONE_M = (2 * (50 + 16)) / 1.2

const point = () => fc.tuple(fc.integer({ min: -3000, max: 3000 }), fc.integer({ min: -3000, max: 3000 }))

/**
 * The shortest tree of three points, closed form: where no angle reaches 120°, √((a² + b² + c²)/2 + 2√3·area).
 * Source: the Fermat point's own theorem, as E. W. Weisstein's CRC Concise Encyclopedia of Mathematics has it (from memory).
 */
test('three places meet at the point that Fermat’s theorem gives', () => {
  fc.assert(
    fc.property(point(), point(), point(), (a, b, c) => {
      const [p, q, r] = [apart(b, c), apart(c, a), apart(a, b)]
      if (Math.min(p, q, r) < 1) return
      const area = Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])) / 2
      const at = fermatPoint(a, b, c)
      const sides = [p, q, r].sort((x, y) => x - y) as [number, number, number]
      const widest = (sides[0] ** 2 + sides[1] ** 2 - sides[2] ** 2) / (2 * sides[0] * sides[1])
      expect(at === undefined).toBe(widest <= -0.5 || area === 0)
      if (!at) return
      const sum = apart(at, a) + apart(at, b) + apart(at, c)
      expect(sum).toBeCloseTo(Math.sqrt((p ** 2 + q ** 2 + r ** 2) / 2 + 2 * Math.sqrt(3) * area), 4)
    }),
  )
})

test('an equal triangle takes √3/2 of its spanning tree, a square (1 + √3)/3, as Gilbert and Pollak have them', () => {
  const side = 2000
  const triangle = leastMapM([
    [0, 0],
    [side, 0],
    [side / 2, (side * Math.sqrt(3)) / 2],
  ])
  expect(Math.abs(triangle.least - (Math.sqrt(3) / 2) * triangle.tree)).toBeLessThan(CLOSE_M)
  const square = leastMapM([
    [0, 0],
    [side, 0],
    [side, side],
    [0, side],
  ])
  expect(Math.abs(square.least - ((1 + Math.sqrt(3)) / 3) * square.tree)).toBeLessThan(CLOSE_M)
})

/** The shortest of all trees of four points with two joints, by a descent of another kind: each joint steps to where it is better. */
function bestByDescent(points: readonly PlanePoint[]): number {
  const pairings = [
    [0, 1, 2, 3],
    [0, 2, 1, 3],
    [0, 3, 1, 2],
  ] as const
  return Math.min(
    ...pairings.map(([a, b, c, d]) => {
      const [A, B, C, D] = [points[a]!, points[b]!, points[c]!, points[d]!]
      const lengthOf = (x: readonly number[]) => {
        const [s, t] = [[x[0]!, x[1]!] as const, [x[2]!, x[3]!] as const]
        return apart(s, A) + apart(s, B) + apart(s, t) + apart(t, C) + apart(t, D)
      }
      let x = [(A[0] + B[0]) / 2, (A[1] + B[1]) / 2, (C[0] + D[0]) / 2, (C[1] + D[1]) / 2]
      for (let step = 1000; step > 0.01; ) {
        const tries = x.flatMap((_, k) => [-step, step].map((by) => x.with(k, x[k]! + by)))
        const best = tries.reduce((p, q) => (lengthOf(q) < lengthOf(p) ? q : p))
        if (lengthOf(best) < lengthOf(x) - 1e-9) x = best
        else step /= 2
      }
      return lengthOf(x)
    }),
  )
}

test('between four places no tree with two joints is shorter, but for what a joint must save; and none goes below √3/2', () => {
  fc.assert(
    fc.property(point(), point(), point(), point(), (...points) => {
      fc.pre(points.every((a, i) => points.slice(i + 1).every((b) => apart(a, b) > 50)))
      const { tree, least } = leastMapM(points)
      expect(least).toBeGreaterThanOrEqual((Math.sqrt(3) / 2) * tree - CLOSE_M)
      const best = bestByDescent(points)
      expect(least).toBeGreaterThanOrEqual(best - CLOSE_M)
      expect(least).toBeLessThanOrEqual(best + FORGONE_M)
    }),
    { numRuns: cases(6) },
  )
})

test('three places with too little wire for two lines are joined in the open, and the report of that plan agrees', () => {
  const side = 1000
  const shelf = shelfOf({
    places: [
      [0, 0],
      [side, 0],
      [side / 2, (side * Math.sqrt(3)) / 2],
    ].map((at, k) => {
      const [lon, lat] = MIDDLE.toPosition(at as unknown as PlanePoint)
      return { id: `p${k}`, name: ['Camp', 'Ford', 'Mill'][k], lon, lat }
    }),
    // 2 × 1,216 m for two lines; 3 × 709 m for three that meet.
    have: { wires: [{ wire: 'wd-1a', lengthM: 720, count: 3 }], sets: [{ set: 'crank-1600', count: 3 }] },
  })
  if (!shelf.ok) throw new Error(JSON.stringify(shelf.problems))
  const answer = shelfAnswer(shelf.value)
  const { nets } = answerInWords(answer, (plan) => plan)
  expect(nets[0]!.why).toContain('A star from the joint in the open')
  expect(nets[0]!.wireM).toBeCloseTo(3 * ((side / Math.sqrt(3)) * 1.2 + 16), -0.5)
  expect([...nets[0]!.plan.stations.values()].map(({ name }) => name)).toContain('Joint 1')
  const { circuits, cautions } = reportPlan(nets[0]!.plan)
  expect([circuits[0]!.verdict, circuits[0]!.worst.verdict]).toEqual([nets[0]!.verdict, nets[0]!.worst])
  expect(cautions.filter(({ code }) => code === 'stock-short')).toEqual([])
})
