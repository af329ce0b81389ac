import proj4 from 'proj4'
import { describe, expect, test } from 'vitest'
import { gridReference } from '../../src/geo/grid-reference'
import { upsFromLonLat } from '../../src/geo/ups'

/** EPSG:32661 and EPSG:32761, as proj4 writes them. */
const PROJ = {
  north: '+proj=stere +lat_0=90 +lat_ts=90 +lon_0=0 +k=0.994 +x_0=2000000 +y_0=2000000 +datum=WGS84 +units=m',
  south:
    '+proj=stere +lat_0=-90 +lat_ts=-90 +lon_0=0 +k=0.994 +x_0=2000000 +y_0=2000000 +datum=WGS84 +units=m',
}

const PLACES = [84, 84.5, 86, 88.3, 89.99, -80, -81.2, -85, -89.5].flatMap((latDeg) =>
  [-180, -135.5, -90, -20, 0, 10, 77.7, 90, 135, 179.99].map((lonDeg) => [lonDeg, latDeg] as const),
)

describe('the polar grid', () => {
  test.each(PLACES)('agrees with proj4 within a millimetre at %d, %d', (lonDeg, latDeg) => {
    const [east, north] = proj4(PROJ[latDeg > 0 ? 'north' : 'south'], [lonDeg, latDeg]) as [number, number]
    const own = upsFromLonLat([lonDeg, latDeg])
    expect(own.eastingM).toBeCloseTo(east, 3)
    expect(own.northingM).toBeCloseTo(north, 3)
  })

  // The references of the poles, as the handbooks' own diagrams of the polar squares have them. From memory.
  test('names the square north-east of each pole', () => {
    expect(gridReference([0, 90])).toBe('Z AH 00000 00000')
    expect(gridReference([0, -90])).toBe('B AN 00000 00000')
  })

  test.each(PLACES.filter(([, latDeg]) => latDeg > 84 || latDeg < -80))(
    'gives a reference at %d, %d whose figures are the last five of proj4’s',
    (lonDeg, latDeg) => {
      const [east, north] = proj4(PROJ[latDeg > 0 ? 'north' : 'south'], [lonDeg, latDeg]) as [number, number]
      const [zone, square, e, n] = gridReference([lonDeg, latDeg])!.split(' ')
      expect(zone).toBe((latDeg > 0 ? 'YZ' : 'AB')[east >= 2_000_000 - 1e-6 ? 1 : 0])
      expect(square).toMatch(/^[A-HJ-NP-Z]{2}$/)
      expect(Math.abs((Math.floor(east + 1e-6) % 100_000) - Number(e))).toBeLessThanOrEqual(1)
      expect(Math.abs((Math.floor(north + 1e-6) % 100_000) - Number(n))).toBeLessThanOrEqual(1)
    },
  )

  test('has the same square for no two places of its range that are 100 km or more apart', () => {
    const seen = new Map<string, readonly [number, number]>()
    for (let latDeg = 84.05; latDeg < 90; latDeg += 0.7)
      for (let lonDeg = -180; lonDeg < 180; lonDeg += 7) {
        const { eastingM, northingM } = upsFromLonLat([lonDeg, latDeg])
        const key = gridReference([lonDeg, latDeg])!.split(' ').slice(0, 2).join(' ')
        const corner = [Math.floor(eastingM / 1e5), Math.floor(northingM / 1e5)] as const
        expect(seen.get(key) ?? corner).toEqual(corner)
        seen.set(key, corner)
      }
  })
})
