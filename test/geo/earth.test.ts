import { expect, test } from 'vitest'
import { degreeM, radiiOfCurvatureM } from '../../src/geo/earth'

test('the radii of curvature are those of the ellipsoid at the equator and at the pole', () => {
  // NIMA TR8350.2, 3rd ed. (1997), table 3.3: semi-minor axis b = 6 356 752.3142 m, polar radius of curvature 6 399 593.6258 m.
  const equator = radiiOfCurvatureM(0)
  expect(equator.primeVerticalM).toBeCloseTo(6378137, 3)
  expect(equator.meridianM).toBeCloseTo(6356752.3142 ** 2 / 6378137, 3)
  const pole = radiiOfCurvatureM(90)
  expect(pole.meridianM).toBeCloseTo(6399593.6258, 3)
  expect(pole.primeVerticalM).toBeCloseTo(6399593.6258, 3)
})

test('a degree is as long as the tables say', () => {
  // 78 847 m at 45°, 111 319 m at the equator, as geographic tables on WGS 84 list them (from memory).
  expect(degreeM(45).lonM).toBeCloseTo(78847, -1)
  expect(degreeM(0).latM).toBeCloseTo(110574, -1)
  expect(degreeM(0).lonM).toBeCloseTo(111319.49, 1)
})
