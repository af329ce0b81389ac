import { describe, expect, test } from 'vitest'
import { gridReference } from '../../src/geo/grid-reference'
import { utmFromLonLat, writtenNorthingM } from '../../src/geo/utm'

describe('grid references', () => {
  // FGDC-STD-011-2001, United States National Grid: the worked example, 18S UJ 23483 06479. Typed from memory.
  test('agree with the worked example of the standard to the metre', () => {
    const latDeg = 38 + 53 / 60 + 22.08269 / 3600
    const lonDeg = -(77 + 2 / 60 + 6.86575 / 3600)
    expect(gridReference([lonDeg, latDeg])).toBe('18S UJ 23483 06479')
  })

  test('go over to the polar grid beyond 84° N and 80° S', () => {
    expect(gridReference([10, 84.1])).toMatch(/^Z /)
    expect(gridReference([-10, -80.1])).toMatch(/^A /)
  })

  test.each([
    [67.02, 48.61],
    [-71.3, -33.4],
    [151.2, -33.9],
    [0.001, 51.5],
  ] as const)('hold the last five figures of the UTM easting and northing at %d, %d', (lonDeg, latDeg) => {
    const { zone, eastingM, northingM } = utmFromLonLat(lonDeg, latDeg)
    const [band, , e, n] = gridReference([lonDeg, latDeg])!.split(' ')
    expect(Number.parseInt(band!, 10)).toBe(zone)
    const lastFive = (m: number) => Math.floor(m) % 100_000
    // The reference is cut to a metre: the package may round a coordinate that lies within a millimetre of one.
    expect(Math.abs(lastFive(eastingM) - Number(e))).toBeLessThanOrEqual(1)
    expect(Math.abs(lastFive(writtenNorthingM(northingM)) - Number(n))).toBeLessThanOrEqual(1)
  })
})
