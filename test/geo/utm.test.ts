import fc from 'fast-check'
import geodesic from 'geographiclib-geodesic'
import { forward } from 'mgrs'
import proj4 from 'proj4'
import { describe, expect, test } from 'vitest'
import { projectionOf } from '../../src/geo/projection'
import {
  gridConvergenceDeg,
  hasUtm,
  lonLatFromUtm,
  utmFromLonLat,
  utmZone,
  writtenNorthingM,
} from '../../src/geo/utm'
import { degToRad, radToDeg } from '../../src/units'

const PLACES: readonly (readonly [number, number])[] = [
  [11.9051, 47.2184],
  [-73.5, 40.5],
  [151.2, -33.86],
  [6.0, 61.2],
  [24.9, 78.3],
  [-179.99, 0.01],
  [2.9, -79.5],
]

describe('the metric grid', () => {
  // MGRS digits are UTM metres cut, not rounded, to whole metres; the package is an independent implementation (Snyder's series).
  test.each(PLACES)('at %f, %f agrees with the last five digits of the military grid', (lonDeg, latDeg) => {
    const { zone, eastingM, northingM } = utmFromLonLat(lonDeg, latDeg)
    const reference = forward([lonDeg, latDeg], 5)
    expect(Number.parseInt(reference, 10)).toBe(zone)
    const digits = reference.slice(-10)
    const written = writtenNorthingM(northingM)
    expect(Math.abs((eastingM % 100_000) - Number(digits.slice(0, 5)) - 0.5)).toBeLessThan(1.5)
    expect(Math.abs((written % 100_000) - Number(digits.slice(5)) - 0.5)).toBeLessThan(1.5)
  })

  // On the central meridian the northing is by definition 0.9996 times the meridian's length from the equator.
  test.each([10, 35, 60, 83.5])(
    'has the length of the meridian to %d° as its northing, within 1 mm',
    (latDeg) => {
      const { s12 } = geodesic.Geodesic.WGS84.Inverse(0, 9, latDeg, 9)
      const { eastingM, northingM } = utmFromLonLat(9, latDeg, 32)
      expect(eastingM).toBeCloseTo(500_000, 6)
      expect(Math.abs(northingM - 0.9996 * (s12 ?? Number.NaN))).toBeLessThan(0.001)
    },
  )

  test.each(PLACES)('gives back the place %f, %f that went in', (lonDeg, latDeg) => {
    const [lon, lat] = lonLatFromUtm(utmFromLonLat(lonDeg, latDeg))
    expect(Math.abs(lon - lonDeg)).toBeLessThan(1e-9)
    expect(Math.abs(lat - latDeg)).toBeLessThan(1e-9)
  })

  // DMA TM 8358.1 (1990): zone 32 is widened over south-west Norway, and four zones serve Svalbard.
  test('has wider zones over Norway and Svalbard', () => {
    expect(utmZone(4, 60)).toBe(32)
    expect(utmZone(4, 50)).toBe(31)
    expect(utmZone(10, 78)).toBe(33)
    expect(utmZone(35, 78)).toBe(37)
    expect(utmZone(180, 10)).toBe(1)
  })
})

// PROJ's transverse Mercator by the package proj4, to the sixth order: another program and another series. What stands between
// the two is the seventh order and later: under a millimetre within the zone and the next one.
test('agrees with proj4 within 1 mm, in the zone and the ones beside it, both ways', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 60 }),
      fc.double({ min: -9, max: 9, noNaN: true }),
      fc.double({ min: -80, max: 84, noNaN: true }),
      fc.boolean(),
      (zone, offDeg, latDeg, south) => {
        const lonDeg = zone * 6 - 183 + offDeg
        const utm = proj4(`+proj=utm +zone=${zone}${south ? ' +south' : ''} +datum=WGS84 +units=m`)
        const own = projectionOf({ kind: 'utm', zone, south })
        const [x, y] = own.forward(lonDeg, latDeg)
        const [x0, y0] = utm.forward([lonDeg, latDeg])
        expect(Math.hypot(x - x0!, y - y0!)).toBeLessThan(0.001)
        const [lon, lat] = own.inverse(x, y)
        // 1 mm is 9e-9° of latitude; meridians lie closer together towards the poles.
        expect(Math.abs(lat - latDeg)).toBeLessThan(9e-9)
        expect(Math.abs(lon - lonDeg) * Math.cos(degToRad(latDeg))).toBeLessThan(9e-9)
      },
    ),
    { numRuns: 300 },
  )
})

test('the grid reaches from 80° south to 84° north', () => {
  expect([-80.1, -80, 0, 84, 84.1].map(hasUtm)).toEqual([false, true, true, true, false])
})

describe('grid convergence', () => {
  // J. P. Snyder, Map Projections: A Working Manual, USGS PP 1395 (1987), eq. 8-12 on the sphere: tan γ = tan Δλ sin φ. The
  // ellipsoid adds less than 0.01° here.
  test.each([
    [69.5, 48.6],
    [66.1, 48.6],
    [71.9, -30],
  ])('at %d°, %d° is that of the sphere within 0.01°', (lonDeg, latDeg) => {
    const centralDeg = utmZone(lonDeg, latDeg) * 6 - 183
    const expected = radToDeg(Math.atan(Math.tan(degToRad(lonDeg - centralDeg)) * Math.sin(degToRad(latDeg))))
    expect(gridConvergenceDeg([lonDeg, latDeg])).toBeCloseTo(expected, 2)
  })
})
