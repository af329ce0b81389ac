import fc from 'fast-check'
import { expect, test } from 'vitest'
import { fittingScale, formatScale } from '../../src/figure/map-scale'

test('the scale is round, and the ground fits the paper at it', () => {
  expect(fittingScale([8500, 3000], [170, 100])).toBe(50_000)
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 2e5, noNaN: true }),
      fc.double({ min: 1, max: 2e5, noNaN: true }),
      (w, h) => {
        const scale = fittingScale([w, h], [160, 90])
        return (
          (w * 1000) / scale <= 160.001 &&
          (h * 1000) / scale <= 90.001 &&
          Number(scale.toPrecision(2)) === scale
        )
      },
    ),
  )
})

test('ground of no extent is drawn at 1 : 1000 rather than at an endless scale', () => {
  expect(fittingScale([0, 0], [100, 100])).toBe(1000)
})

test('a scale is written with its thousands apart', () => {
  expect(formatScale(12_500)).toBe('1 : 12\u00a0500')
})
