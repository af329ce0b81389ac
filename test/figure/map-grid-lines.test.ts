import { forward } from 'mgrs'
import { expect, test } from 'vitest'
import { gridLines, type LonLatBox } from '../../src/figure/map-grid-lines'
import { utmFromLonLat } from '../../src/geo/utm'

const around = (lonDeg: number, latDeg: number, halfDeg: number): LonLatBox => ({
  west: lonDeg - halfDeg,
  east: lonDeg + halfDeg,
  south: latDeg - halfDeg / 2,
  north: latDeg + halfDeg / 2,
})

const written = ({ prefix, main }: { prefix: string; main: string }) => prefix + main

test('near the ground the grid is metric, and every point of a line has the same easting or northing', () => {
  const lines = gridLines(around(11.9, 47.2, 0.05), 10)
  expect(lines.length).toBeGreaterThan(8)
  for (const { across, points } of lines) {
    const values = points.map(([lon, lat]) => {
      const { eastingM, northingM } = utmFromLonLat(lon, lat, 32)
      return across === 'east' ? eastingM : northingM
    })
    // Points where a line meets the rim are taken on the chord of its curve, at most a few centimetres off here.
    expect(Math.max(...values) - Math.min(...values)).toBeLessThan(0.5)
    expect(Math.abs(values[0]! / 1000 - Math.round(values[0]! / 1000))).toBeLessThan(0.001)
  }
})

test('a line bears the kilometres that the military grid gives for a place on it', () => {
  const line = gridLines(around(11.9, 47.2, 0.05), 10).find(({ across }) => across === 'east')!
  const [lonDeg, latDeg] = line.points[Math.floor(line.points.length / 2)]!
  // A metre to the east, so that the digits are cut on the line's own side.
  const reference = forward([lonDeg + 0.00002, latDeg], 5)
  expect(line.label.main).toBe(reference.slice(-10, -8))
})

test.each([
  [1, 100],
  [2, 200],
  [10, 1000],
  [100, 10_000],
])('at %d m a pixel the lines stand %d m apart', (metresPerPx, stepM) => {
  const lines = gridLines(around(9, 47, 0.0001 * stepM), metresPerPx).filter(
    ({ across }) => across === 'east',
  )
  const eastings = lines.map(({ points }) => utmFromLonLat(points[0]![0], points[0]![1], 32).eastingM)
  expect(eastings[1]! - eastings[0]!).toBeCloseTo(stepM, 1)
})

test('where two zones meet, each keeps to its own side', () => {
  const lines = gridLines(around(12, 47, 0.1), 20)
  const zones = lines.map(({ points }) =>
    points.every(([lon]) => lon <= 12) ? 32 : points.every(([lon]) => lon >= 12) ? 33 : 0,
  )
  expect(new Set(zones)).toEqual(new Set([32, 33]))
})

test('across the antimeridian the lines go on without a jump', () => {
  const lines = gridLines({ west: 179.9, east: 180.1, south: -17, north: -16.9 }, 20)
  for (const { points } of lines) for (const [lon] of points) expect(lon).toBeGreaterThan(179.89)
  expect(lines.some(({ points }) => points[0]![0] > 180.001)).toBe(true)
})

test('at small scales there are meridians and parallels, named by side', () => {
  const labels = gridLines({ west: -30, east: 30, south: -20, north: 40 }, 5000).map(({ label }) =>
    written(label),
  )
  expect(labels).toContain('10° W')
  expect(labels).toContain('0°')
  expect(labels).toContain('20° N')
})

test('beyond 84° north there is no metric grid to draw', () => {
  const labels = gridLines(around(10, 85, 0.2), 20).map(({ label }) => written(label))
  expect(labels.every((label) => label.includes('°'))).toBe(true)
})
