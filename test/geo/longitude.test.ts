import { expect, test } from 'vitest'
import { nearLonDeg, unrolled, wrapLonDeg } from '../../src/geo/longitude'

test('a line across the antimeridian goes the short way', () => {
  const path = unrolled(
    [
      [179.9, -17],
      [-179.9, -17.1],
      [-179.7, -17],
    ],
    179,
  )
  expect(path.map(([lon]) => Number(lon.toFixed(6)))).toEqual([179.9, 180.1, 180.3])
})

test('the same line seen from the other side is drawn there', () => {
  expect(
    unrolled(
      [
        [179.9, 0],
        [-179.9, 0],
      ],
      -179,
    ).map(([lon]) => Number(lon.toFixed(6))),
  ).toEqual([-180.1, -179.9])
})

test('a longitude near another differs from it by at most half a circle', () => {
  for (const lon of [-180, -90, 0, 90, 180])
    expect(Math.abs(nearLonDeg(lon, 500) - 500)).toBeLessThanOrEqual(180)
  expect(wrapLonDeg(190)).toBe(-170)
})
