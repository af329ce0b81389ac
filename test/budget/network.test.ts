import fc from 'fast-check'
import { lusolve, type Matrix, complex as mathComplex, matrix } from 'mathjs'
import { expect, test } from 'vitest'
import { planElimination } from '../../src/budget/elimination'
import { addPi, addShunt, emptyAdmittances, factorNetwork, voltagesFrom } from '../../src/budget/network'

interface AnyNetwork {
  readonly nodes: number
  readonly branches: readonly { a: number; b: number; re: number; im: number }[]
  readonly shunts: readonly { re: number; im: number }[]
}

const admittance = () =>
  fc.record({
    re: fc.double({ min: 1e-5, max: 1e-2, noNaN: true }),
    im: fc.double({ min: -1e-3, max: 1e-3, noNaN: true }),
  })

/** A tree of stations, each joined to an earlier one, and as many chords as asked. */
const anyNetwork = (chords: number): fc.Arbitrary<AnyNetwork> =>
  fc.integer({ min: 2, max: 12 }).chain((nodes) =>
    fc.record({
      nodes: fc.constant(nodes),
      branches: fc
        .tuple(
          fc.tuple(
            ...Array.from({ length: nodes - 1 }, (_, k) =>
              fc.tuple(fc.integer({ min: 0, max: k }), fc.constant(k + 1), admittance()),
            ),
          ),
          fc.array(
            fc.tuple(
              fc.integer({ min: 0, max: nodes - 1 }),
              fc.integer({ min: 0, max: nodes - 1 }),
              admittance(),
            ),
            { maxLength: chords },
          ),
        )
        .map(([tree, extra]) =>
          [...tree, ...extra].filter(([a, b]) => a !== b).map(([a, b, y]) => ({ a, b, ...y })),
        ),
      shunts: fc.array(admittance(), { minLength: nodes, maxLength: nodes }),
    }),
  )

function solve({ nodes, branches, shunts }: AnyNetwork, at: number) {
  const shape = planElimination(
    nodes,
    branches.map(({ a, b }) => ({ from: a, to: b })),
  )
  const y = emptyAdmittances(shape)
  for (const [k, { a, b, re, im }] of branches.entries())
    addPi(y, shape.branchOfEdge[k]!, { from: a, to: b }, new Float64Array([re, im, 0, 0, 0, 0]))
  for (const [node, shunt] of shunts.entries()) addShunt(y, node, shunt)
  return { shape, volts: voltagesFrom(factorNetwork(shape, y), at) }
}

/** The same by the nodal matrix and the LU solver of a general-purpose mathematics library. */
function dense({ nodes, branches, shunts }: AnyNetwork, at: number) {
  const y = Array.from({ length: nodes }, () => Array.from({ length: nodes }, () => mathComplex(0, 0)))
  const put = (row: number, column: number, re: number, im: number) => {
    y[row]![column] = mathComplex(y[row]![column]!.re + re, y[row]![column]!.im + im)
  }
  for (const { a, b, re, im } of branches) {
    put(a, a, re, im)
    put(b, b, re, im)
    put(a, b, -re, -im)
    put(b, a, -re, -im)
  }
  for (const [node, { re, im }] of shunts.entries()) put(node, node, re, im)
  const right = Array.from({ length: nodes }, (_, node) => [mathComplex(node === at ? 1 : 0, 0)])
  const solved = lusolve(matrix(y as never), right as never) as unknown as Matrix
  return (solved.toArray() as { re: number; im: number }[][]).map(([value]) => value!)
}

// The 100 GΩ reference is a millionth of the smallest admittance here, 1e-11 S beside 1e-5 S. What the dense solver loses where
// the far end of a chain is a billionth of the near end is 1e-11 of the near end; star and mesh only add, and lose nothing.
test.each([0, 3])('networks with up to %i rings agree with a dense solver', (chords) => {
  fc.assert(
    fc.property(anyNetwork(chords), (network) => {
      const { volts } = solve(network, 0)
      const expectations = dense(network, 0)
      const largest = Math.max(...expectations.map(({ re, im }) => Math.hypot(re, im)))
      for (const [node, expected] of expectations.entries()) {
        const size = Math.hypot(expected.re, expected.im)
        expect(Math.hypot(volts.re[node]! - expected.re, volts.im[node]! - expected.im)).toBeLessThan(
          2e-6 * size + 1e-11 * largest,
        )
      }
    }),
  )
})

test('1 A fed in at one place raises at another what 1 A there would raise here', () => {
  fc.assert(
    fc.property(anyNetwork(4), fc.nat(), (network, pick) => {
      const other = pick % network.nodes
      const here = solve(network, 0).volts
      const there = solve(network, other).volts
      const size = Math.hypot(here.re[other]!, here.im[other]!)
      expect(Math.hypot(here.re[other]! - there.re[0]!, here.im[other]! - there.im[0]!)).toBeLessThan(
        1e-10 * size,
      )
    }),
  )
})

test('a tree is taken apart without a single new branch', () => {
  fc.assert(
    fc.property(anyNetwork(0), (network) => {
      const { shape } = solve(network, 0)
      expect(shape.branchCount).toBe(network.nodes - 1)
      expect(shape.mesh.length).toBe(0)
    }),
  )
})

test('a network that floats, without any way across the pair, still tells the ohms between its ends', () => {
  const ladder: AnyNetwork = {
    nodes: 3,
    branches: [
      { a: 0, b: 1, re: 0.01, im: 0 },
      { a: 1, b: 2, re: 0.02, im: 0 },
    ],
    shunts: [],
  }
  const near = solve(ladder, 0).volts.re
  const far = solve(ladder, 2).volts.re
  // 100 Ω and 50 Ω in series. Of 16 digits of 1e11 V some 1e-4 V are left.
  expect(near[0]! - near[2]! - far[0]! + far[2]!).toBeCloseTo(150, 3)
})
