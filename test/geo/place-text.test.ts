import fc from 'fast-check'
import proj4 from 'proj4'
import { describe, expect, test } from 'vitest'
import { parsePlace } from '../../src/geo/parse-place'
import { type PlaceForm, placeText } from '../../src/geo/place-text'
import type { Position } from '../../src/geo/position'

const FORMS: readonly PlaceForm[] = ['decimal', 'minutes', 'seconds', 'grid', 'utm']

describe('a place is written', () => {
  // A degree has 60 minutes of 60 seconds: 47.2184° is 47° 13.104′, and 0.104′ is 6.24″.
  test.each<[PlaceForm, string]>([
    ['decimal', '47.21840° N 11.90510° W'],
    ['minutes', '47° 13.104′ N 11° 54.306′ W'],
    ['seconds', '47° 13′ 06.2″ N 11° 54′ 18.4″ W'],
  ])('in %s', (form, text) => {
    expect(placeText([-11.9051, 47.2184], form)).toBe(text)
  })

  test('with no part of sixty, however near the next degree it lies', () => {
    expect(placeText([-0.9999999, -46.9999999], 'seconds')).toBe('47° 00′ 00.0″ S 1° 00′ 00.0″ W')
    expect(placeText([9.99999999, 0], 'minutes')).toBe('0° 00.000′ N 10° 00.000′ E')
  })

  // proj4 is another hand's transverse Mercator.
  test.each<[Position, string, string]>([
    [[11.9051, 47.2184], '+zone=32', '32T'],
    [[-70.25, -33.5], '+zone=19 +south', '19H'],
    [[5.3, 60.4], '+zone=32', '32V'],
  ])('in UTM with zone and band', (position, zone, band) => {
    const [e, n] = proj4('WGS84', `+proj=utm ${zone} +datum=WGS84`, [position[0], position[1]])
    expect(placeText(position, 'utm')).toBe(`${band} ${e!.toFixed(0)} ${n!.toFixed(0)}`)
  })

  test('in degrees where no grid reaches', () => {
    for (const form of ['grid', 'utm'] as const)
      expect(placeText([10, 85], form)).toBe('85.00000° N 10.00000° E')
  })
})

test('whatever is written is read back within two metres', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -179.9, max: 179.9, noNaN: true }),
      fc.double({ min: -79.9, max: 83.9, noNaN: true }),
      fc.constantFrom(...FORMS),
      (lonDeg, latDeg, form) => {
        const read = parsePlace(placeText([lonDeg, latDeg], form))
        if (!read.ok) throw new Error(`${placeText([lonDeg, latDeg], form)} is refused`)
        const northM = (read.value[1] - latDeg) * 111_300
        const eastM = (read.value[0] - lonDeg) * 111_300 * Math.cos((latDeg * Math.PI) / 180)
        // A thousandth of a minute is 1.9 m, a tenth of a second 3.1 m, rounded to the half of it; a grid square of 1 m is cut, not rounded.
        expect(Math.hypot(northM, eastM)).toBeLessThan(2.3)
      },
    ),
  )
})
