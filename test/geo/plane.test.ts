import fc from 'fast-check'
import geodesic from 'geographiclib-geodesic'
import { expect, test } from 'vitest'
import { planeAbout } from '../../src/geo/plane'
import type { Position } from '../../src/geo/position'

const { WGS84 } = geodesic.Geodesic

test('distances on the plane agree with GeographicLib within 0.2 % over a net of 20 km below 60° of latitude', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -60, max: 60, noNaN: true }),
      fc.double({ min: -180, max: 179.999, noNaN: true }),
      fc.double({ min: 0, max: 360, noNaN: true }),
      (latDeg, lonDeg, courseDeg) => {
        const from = WGS84.Direct(latDeg, lonDeg, courseDeg, 10_000)
        const to = WGS84.Direct(latDeg, lonDeg, courseDeg + 180, 10_000)
        const ends: Position[] = [
          [from.lon2!, from.lat2!],
          [to.lon2!, to.lat2!],
        ]
        const plane = planeAbout(ends)
        const [a, b] = ends.map(plane.toPlane)
        expect(Math.hypot(a![0] - b![0], a![1] - b![1]) / 20_000).toBeCloseTo(1, 2.4)
      },
    ),
    { numRuns: 200 },
  )
})

test('a net across the antimeridian lies in one piece', () => {
  const ends: Position[] = [
    [179.98, -17],
    [-179.97, -17.01],
  ]
  const plane = planeAbout(ends)
  const [west, east] = ends.map(plane.toPlane)
  const s12 = WGS84.Inverse(-17, 179.98, -17.01, -179.97).s12!
  expect(east![0]).toBeGreaterThan(west![0])
  expect(Math.hypot(east![0] - west![0], east![1] - west![1])).toBeCloseTo(s12, -1)
  expect(Math.abs(plane.middle[0])).toBeCloseTo(179.995, 3)
})

test('a point of the plane leads back to its place on the globe', () => {
  const plane = planeAbout([
    [10, 50],
    [10.2, 50.1],
  ])
  const [lonDeg, latDeg] = plane.toPosition(plane.toPlane([10.05, 50.02]))
  expect(lonDeg).toBeCloseTo(10.05, 9)
  expect(latDeg).toBeCloseTo(50.02, 9)
})
