import { describe, expect, test } from 'vitest'
import { gridReference } from '../../src/geo/grid-reference'
import { gridConvergenceDeg, utmZoneOf } from '../../src/geo/utm-zone'
import { degToRad, radToDeg } from '../../src/units'

describe('grid references', () => {
  // FGDC-STD-011-2001, United States National Grid: the worked example, 18S UJ 23483 06479. Typed from memory.
  test('agree with the worked example of the standard to the metre', () => {
    const latDeg = 38 + 53 / 60 + 22.08269 / 3600
    const lonDeg = -(77 + 2 / 60 + 6.86575 / 3600)
    expect(gridReference([lonDeg, latDeg])).toBe('18S UJ 23483 06479')
  })

  test('end where the grid ends: beyond 84° N and 80° S', () => {
    expect(gridReference([10, 84.1])).toBeUndefined()
    expect(gridReference([10, -80.1])).toBeUndefined()
    expect(utmZoneOf([10, 85])).toBeUndefined()
  })

  // NGA.STND.0037 (2014), section 2: zone 32 is widened over south-west Norway, 31 33 35 37 over Svalbard.
  test('know the zones about Norway and Svalbard', () => {
    expect(utmZoneOf([4, 61])!.zone).toBe(32)
    expect(utmZoneOf([10, 78])!.zone).toBe(33)
    expect(utmZoneOf([4, 55])!.zone).toBe(31)
  })

  test('hold the last five figures of the UTM easting and northing', () => {
    for (const position of [
      [67.02, 48.61],
      [-71.3, -33.4],
      [151.2, -33.9],
      [0.001, 51.5],
    ] as const) {
      const [eastingM, northingM] = utmZoneOf(position)!.forward(position)
      const [, , e, n] = gridReference(position)!.split(' ')
      const lastFive = (m: number) => Math.floor(m) % 100_000
      // The reference is cut to a metre: the library may round a coordinate that lies within a millimetre of one.
      expect(Math.abs(lastFive(eastingM) - Number(e))).toBeLessThanOrEqual(1)
      expect(Math.abs(lastFive(northingM) - Number(n))).toBeLessThanOrEqual(1)
    }
  })
})

describe('UTM', () => {
  // J. P. Snyder, Map Projections: A Working Manual, USGS PP 1395 (1987), eq. 8-12 to first order: sin of the latitude times the
  // longitude from the central meridian. The next term is below 0.01° here.
  test.each([
    [69.5, 48.6],
    [66.1, 48.6],
    [71.9, -30],
  ])('grid north at %d°, %d° turns from true north by about sin φ · Δλ', (lonDeg, latDeg) => {
    const zone = utmZoneOf([lonDeg, latDeg])!
    const centralDeg = zone.zone * 6 - 183
    const expected = radToDeg(Math.atan(Math.tan(degToRad(lonDeg - centralDeg)) * Math.sin(degToRad(latDeg))))
    expect(gridConvergenceDeg(zone, [lonDeg, latDeg])).toBeCloseTo(expected, 2)
  })

  test('leads back to the place it was reckoned from', () => {
    const zone = utmZoneOf([67.02, 48.61])!
    const [lonDeg, latDeg] = zone.inverse(...zone.forward([67.02, 48.61]))
    expect(lonDeg).toBeCloseTo(67.02, 8)
    expect(latDeg).toBeCloseTo(48.61, 8)
  })
})
