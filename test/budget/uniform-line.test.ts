import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { add, complex, multiply, ONE, subtract } from '../../src/budget/complex'
import type { LineConstants } from '../../src/budget/line-constants'
import {
  type Chain,
  cascade,
  inputOhm,
  insertionLossDb,
  lineChain,
  piSection,
} from '../../src/budget/uniform-line'

// Any line that could be strung: from heavy open wire to fine cable, dry to soaking.
const anyLine = (): fc.Arbitrary<LineConstants> =>
  fc.record({
    ohmPerKm: fc.double({ min: 1, max: 1000, noNaN: true }),
    henryPerKm: fc.double({ min: 0, max: 5e-3, noNaN: true }),
    faradPerKm: fc.double({ min: 0, max: 300e-9, noNaN: true }),
    siemensPerKm: fc.double({ min: 0, max: 500e-6, noNaN: true }),
  })
const anyKm = () => fc.double({ min: 0.001, max: 20, noNaN: true })
const anyHz = () => fc.constantFrom(0, 16.7, 20, 25, 300, 1000, 3400)
const anyOhm = () => fc.double({ min: 50, max: 20_000, noNaN: true })

const entries = (chain: Chain) => [
  add(ONE, chain.aLessOne),
  chain.bOhm,
  chain.cSiemens,
  add(ONE, chain.dLessOne),
]

/** Rounding: each entry is good to some 1e-14 of the largest term it was made of. */
function expectSame(one: Chain, other: Chain): void {
  const [a1, b1, c1, d1] = entries(one)
  const [a2, b2, c2, d2] = entries(other)
  for (const [x, y] of [
    [a1, a2],
    [b1, b2],
    [c1, c2],
    [d1, d2],
  ] as const) {
    const size = Math.hypot(x!.re, x!.im) + Math.hypot(y!.re, y!.im)
    expect(Math.hypot(x!.re - y!.re, x!.im - y!.im)).toBeLessThanOrEqual(1e-9 * size + 1e-15)
  }
}

describe('a uniform line', () => {
  test('of length a, then one of length b, is one of length a + b', () => {
    fc.assert(
      fc.property(anyLine(), anyKm(), anyKm(), anyHz(), (line, aKm, bKm, hz) => {
        expectSame(
          cascade(lineChain(line, aKm, hz), lineChain(line, bKm, hz)),
          lineChain(line, aKm + bKm, hz),
        )
      }),
    )
  })

  test('is reciprocal: A D − B C = 1', () => {
    fc.assert(
      fc.property(anyLine(), anyKm(), anyHz(), (line, km, hz) => {
        const [a, b, c, d] = entries(lineChain(line, km, hz))
        const determinant = subtract(multiply(a!, d!), multiply(b!, c!))
        const size = 1 + Math.hypot(a!.re, a!.im) * Math.hypot(d!.re, d!.im)
        expect(Math.hypot(determinant.re - 1, determinant.im)).toBeLessThan(1e-12 * size)
      }),
    )
  })

  test('makes no power: what it takes in is never less than nothing, whatever resistance ends it', () => {
    fc.assert(
      fc.property(anyLine(), anyKm(), anyHz(), anyOhm(), (line, km, hz, ohms) => {
        expect(inputOhm(lineChain(line, km, hz), complex(ohms)).re).toBeGreaterThan(0)
      }),
    )
  })

  test('between equal resistances never loses less when it is longer, as long as it has no coils', () => {
    fc.assert(
      fc.property(anyLine(), anyKm(), anyKm(), anyHz(), anyOhm(), (line, km, moreKm, hz, ohms) => {
        const plain = { ...line, henryPerKm: 0 }
        const loss = (lengthKm: number) =>
          insertionLossDb(lineChain(plain, lengthKm, hz), complex(ohms), complex(ohms))
        expect(loss(km + moreKm)).toBeGreaterThanOrEqual(loss(km) - 1e-9)
      }),
    )
  })

  test('at 0 Hz without leakage is a resistor', () => {
    const line = { ohmPerKm: 134, henryPerKm: 6e-4, faradPerKm: 28e-9, siemensPerKm: 0 }
    const chain = lineChain(line, 3, 0)
    expect(chain.bOhm).toEqual({ re: 402, im: 0 })
    expect(piSection(chain).shuntFrom).toEqual({ re: 0, im: 0 })
  })

  test('so long that nothing arrives still has figures', () => {
    const line = { ohmPerKm: 300, henryPerKm: 6e-4, faradPerKm: 100e-9, siemensPerKm: 1e-4 }
    const pi = piSection(lineChain(line, 1e6, 1000))
    for (const y of [pi.series, pi.shuntFrom, pi.shuntTo]) {
      expect(Number.isFinite(y.re) && Number.isFinite(y.im)).toBe(true)
    }
  })
})
