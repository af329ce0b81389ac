import { expect, test } from 'vitest'
import { contourIntervalM } from '../../src/terrain/contours'

test('contours stand at round figures of the unit that is read', () => {
  // A slope from 0 to 100 m is 328 ft: twenty lines or fewer at every 5 m, and at every 20 ft.
  const slope = Float32Array.from({ length: 100 }, (_, i) => (i * 100) / 99)
  expect(contourIntervalM(slope)).toBe(5)
  expect(contourIntervalM(slope, 0.3048)).toBeCloseTo(20 * 0.3048, 12)
})
