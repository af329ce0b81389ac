import { expect, test } from 'vitest'
import { bearingBasis, northsAt } from '../../src/sheet/paper-source'

// The printed test values of WMM2025 (NOAA/NCEI and BGS) put the needle east in western North America and west in eastern:
// which way it points is all that counts here, the model itself is checked in test/measure.
test('a needle that points east of true is read lower than true, one that points west higher', () => {
  const east = northsAt([-120, 45], '2026-11-25')
  const west = northsAt([-70, 45], '2026-11-25')
  if (!east.declination.ok || !west.declination.ok) throw new Error('no declination')
  expect(east.declination.value.eastDeg).toBeGreaterThan(10)
  expect(west.declination.value.eastDeg).toBeLessThan(-10)
  expect(bearingBasis(east).of(90)).toBeCloseTo(90 - east.declination.value.eastDeg, 9)
  expect(bearingBasis(east).of(90)).toBeLessThan(80)
  expect(bearingBasis(west).of(90)).toBeGreaterThan(100)
})
