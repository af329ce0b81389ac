import { forward } from 'mgrs'
import proj4 from 'proj4'
import { expect, test } from 'vitest'
import { parsePlace } from '../../src/geo/parse-place'

test.each([
  ['47.2184 11.9051', 11.9051, 47.2184],
  ['47.2184, 11.9051', 11.9051, 47.2184],
  ['47.2184° N 11.9051° E', 11.9051, 47.2184],
  ['N 47.2184 E 11.9051', 11.9051, 47.2184],
  ['11.9051 E, 47.2184 N', 11.9051, 47.2184],
  ['-33.5 -70.25', -70.25, -33.5],
  ['33° 30′ S 70° 15′ W', -70.25, -33.5],
  ["33°30'36\"S, 70°15'W", -70.25, -33.51],
  // As other programs copy a pair.
  ['(47.2184, 11.9051)', 11.9051, 47.2184],
  ['[47.2184,11.9051]', 11.9051, 47.2184],
  ['geo:47.2184,11.9051', 11.9051, 47.2184],
  ['lat: 47.2184, lon: 11.9051', 11.9051, 47.2184],
  ['47,2184 11,9051', 11.9051, 47.2184],
  ['47,2184; -11,9051', -11.9051, 47.2184],
  ['47° 13.104′ N 11° 54.306′ E', 11.9051, 47.2184],
  ['N 47 13.104 E 11 54.306', 11.9051, 47.2184],
  ['N47°13.104 W011°54.306', -11.9051, 47.2184],
])('%s is a place', (text, lonDeg, latDeg) => {
  const result = parsePlace(text)
  if (!result.ok) throw new Error('refused')
  expect(result.value[0]).toBeCloseTo(lonDeg, 9)
  expect(result.value[1]).toBeCloseTo(latDeg, 9)
})

test('a grid reference, spaced or not, leads to the middle of its square', () => {
  const reference = forward([11.9051, 47.2184], 4)
  const spaced = reference.replace(/^(\d+\w)(\w\w)(\d+)$/, '$1 $2 $3')
  for (const text of [reference, spaced, spaced.toLowerCase()]) {
    const result = parsePlace(text)
    if (!result.ok) throw new Error('refused')
    // Half of a 10 m square is 5 m: 0.00007° of longitude here.
    expect(Math.abs(result.value[0] - 11.9051)).toBeLessThan(0.0001)
    expect(Math.abs(result.value[1] - 47.2184)).toBeLessThan(0.0001)
  }
})

test.each([
  '',
  'camp',
  '91 0',
  '0 181',
  '47.2184',
  '47 11 9',
  '-33 S, 70 W',
  '99X ZZ 1234',
  '47° 75′ N 11° E',
  '47,2184, 11,9051',
])('%j is refused with a sentence', (text) => {
  expect(parsePlace(text)).toMatchObject({ ok: false, problems: [{ code: 'no-place' }] })
})

// The same place through proj4's UTM, an implementation by other hands; a metre is about 1e-5 °.
test('UTM with its zone and band, or its hemisphere, leads to the place', () => {
  const [lonDeg, latDeg] = proj4('+proj=utm +zone=32 +datum=WGS84', 'WGS84', [690812, 5232711])
  for (const text of [
    '32T 690812 5232711',
    '32 N 690812 5232711',
    'utm 32t 690812 mE 5232711 mN',
    '32T 690812E 5232711N',
  ]) {
    const place = parsePlace(text)
    expect(place.ok && place.value[0]).toBeCloseTo(lonDeg!, 6)
    expect(place.ok && place.value[1]).toBeCloseTo(latDeg!, 6)
  }
  const [south, southLat] = proj4('+proj=utm +zone=19 +south +datum=WGS84', 'WGS84', [350000, 6300000])
  const place = parsePlace('19H 350000 6300000')
  expect(place.ok && place.value[0]).toBeCloseTo(south!, 6)
  expect(place.ok && place.value[1]).toBeCloseTo(southLat!, 6)
  expect(parsePlace('61T 690812 5232711').ok).toBe(false)
})
