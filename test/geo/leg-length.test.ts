import geodesic from 'geographiclib-geodesic'
import { describe, expect, test } from 'vitest'
import { legGeometry, pointOnLeg } from '../../src/geo/leg-length'

// Outside truth: GeographicLib, C. F. F. Karney, Algorithms for geodesics, J. Geodesy 87 (2013), accurate to nanometres.
const WGS84 = geodesic.Geodesic.WGS84

/** A small seeded generator (mulberry32), so that every run draws the same legs. */
function seeded(seed: number): () => number {
  let a = seed
  return () => {
    a = (a + 0x6d2b79f5) | 0
    let t = Math.imul(a ^ (a >>> 15), 1 | a)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

function leg(latDeg: number, lonDeg: number, azimuthDeg: number, lengthM: number) {
  const end = WGS84.Direct(latDeg, lonDeg, azimuthDeg, lengthM)
  const wrapped = ((((end.lon2! + 180) % 360) + 360) % 360) - 180
  return legGeometry([lonDeg, latDeg], [wrapped, end.lat2!])
}

const turnDeg = (a: number, b: number) => Math.abs(((((a - b) % 360) + 540) % 360) - 180)

function worstOver(draws: number, seed: number, place: (random: () => number) => [number, number]) {
  const random = seeded(seed)
  let lengthPct = 0
  let bearingDeg = 0
  for (let i = 0; i < draws; i++) {
    const [latDeg, lonDeg] = place(random)
    const azimuthDeg = random() * 360
    const lengthM = 50 * 400 ** random()
    const found = leg(latDeg, lonDeg, azimuthDeg, lengthM)
    lengthPct = Math.max(lengthPct, (Math.abs(found.mapM - lengthM) / lengthM) * 100)
    bearingDeg = Math.max(bearingDeg, turnDeg(found.bearingDeg, azimuthDeg))
  }
  return { lengthPct, bearingDeg }
}

describe('a leg of 50 m to 20 km against GeographicLib', () => {
  // 0.01 % and 0.02° are what the plan format and the papers promise; the worst found is far inside.
  const PLACES: [string, number, (r: () => number) => [number, number]][] = [
    ['anywhere', 4000, (r) => [r() * 180 - 90, r() * 360 - 180]],
    ['above 80° of latitude', 2000, (r) => [80 + r() * 10, r() * 360 - 180]],
    ['within 30 km of the pole', 2000, (r) => [-89.73 - r() * 0.27, r() * 360 - 180]],
    ['across the antimeridian', 2000, (r) => [r() * 160 - 80, 180 - r() * 0.02]],
    ['on the equator', 1000, (r) => [0, r() * 360 - 180]],
  ]
  test.each(PLACES)('%s keeps to the geodesic', (where, draws, place) => {
    const worst = worstOver(draws, 7, place)
    console.info(
      `legs ${where}: worst length ${worst.lengthPct.toExponential(1)} %, bearing ${worst.bearingDeg.toExponential(1)}°`,
    )
    expect(worst.lengthPct).toBeLessThan(0.01)
    expect(worst.bearingDeg).toBeLessThan(0.02)
  })
})

test('a leg of hundreds of kilometres is taken in stretches and stays within 0.01 % too', () => {
  const random = seeded(3)
  for (let i = 0; i < 200; i++) {
    const lengthM = 20_000 + random() * 480_000
    const found = leg(random() * 170 - 85, random() * 360 - 180, random() * 360, lengthM)
    expect(Math.abs(found.mapM / lengthM - 1)).toBeLessThan(1e-4)
  }
})

test('a long leg from a pole is as long as the same leg to it', () => {
  const geodesicM = WGS84.Inverse(90, 0, 85, 10).s12!
  for (const { mapM } of [legGeometry([0, 90], [10, 85]), legGeometry([10, 85], [0, 90])]) {
    expect(Math.abs(mapM / geodesicM - 1)).toBeLessThan(1e-4)
  }
})

test('a leg of no length measures nothing', () => {
  expect(legGeometry([10, 55], [10, 55])).toEqual({ mapM: 0, bearingDeg: 0 })
})

test('a leg back has the same length', () => {
  const there = legGeometry([10, 55], [10.1, 55.05])
  const back = legGeometry([10.1, 55.05], [10, 55])
  expect(there.mapM).toBeCloseTo(back.mapM, 6)
})

test('the middle of a leg lies as far from one end as from the other, also over the antimeridian', () => {
  const from = [179.95, 60] as const
  const to = [-179.95, 60.02] as const
  const middle = pointOnLeg(from, to, 0.5)
  expect(Math.abs(middle[0])).toBeLessThanOrEqual(180)
  const toMiddle = WGS84.Inverse(from[1], from[0], middle[1], middle[0]).s12!
  const fromMiddle = WGS84.Inverse(middle[1], middle[0], to[1], to[0]).s12!
  expect(toMiddle).toBeCloseTo(fromMiddle, 1)
})
