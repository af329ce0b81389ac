import fc from 'fast-check'
import { expect, test } from 'vitest'
import { fittingScale, formatScale, scaleBar } from '../../src/figure/map-scale'

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

// 1 : 50 000: 20 mm are 1 km, 32.187 mm are a statute mile.
test('the scale bar is a round length on the ground, drawn true to scale', () => {
  expect(scaleBar(50_000, 50, 'metric')).toEqual({ lengthMm: 40, text: '2 km' })
  expect(scaleBar(50_000, 50, 'us')).toEqual({ lengthMm: expect.closeTo(32.187, 3), text: '1 mi' })
  expect(scaleBar(5000, 50, 'metric')).toEqual({ lengthMm: 40, text: '200 m' })
})

test('a scale is written with its thousands apart', () => {
  expect(formatScale(12_500)).toBe('1 : 12\u00a0500')
})
