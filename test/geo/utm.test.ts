import geodesic from 'geographiclib-geodesic'
import { forward } from 'mgrs'
import { describe, expect, test } from 'vitest'
import { FALSE_NORTHING_M, lonLatFromUtm, utmFromLonLat, utmZone } from '../../src/geo/utm'

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
    const written = northingM < 0 ? northingM + FALSE_NORTHING_M : northingM
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
  })
})
