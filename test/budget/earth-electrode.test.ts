import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { rodOhms, rodsOhms } from '../../src/budget/earth-electrode'

const rod = { lengthM: 1.5, diameterM: 0.016 }

describe('driven rods', () => {
  test('of 1.5 m × 16 mm in 100 Ω·m have 59.6 Ω', () => {
    // By hand: 100 / (2π 1.5) · (ln 750 − 1).
    expect(rodOhms(rod, 100)).toBeCloseTo(59.63, 2)
  })

  test('resist less the deeper, the thicker and the more they are, but never as 1/n', () => {
    const rods = fc.record({
      lengthM: fc.double({ min: 0.5, max: 6, noNaN: true }),
      diameterM: fc.double({ min: 0.008, max: 0.03, noNaN: true }),
    })
    fc.assert(
      fc.property(rods, fc.integer({ min: 1, max: 23 }), (one, n) => {
        const ohms = rodsOhms(one, 100, n)
        expect(rodOhms({ ...one, lengthM: one.lengthM * 1.1 }, 100)).toBeLessThan(rodOhms(one, 100))
        expect(rodOhms({ ...one, diameterM: one.diameterM * 1.1 }, 100)).toBeLessThan(rodOhms(one, 100))
        expect(rodsOhms(one, 100, n + 1)).toBeLessThan(ohms)
        expect(ohms).toBeGreaterThanOrEqual(rodOhms(one, 100) / n)
      }),
    )
  })

  test('of none, or of more than the table has, are a programming fault', () => {
    expect(() => rodsOhms(rod, 100, 0)).toThrow(RangeError)
    expect(() => rodsOhms(rod, 100, 25)).toThrow(RangeError)
  })
})
