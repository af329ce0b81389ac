import { expect, test } from 'vitest'
import { CLEARANCES } from '../../src/catalog/clearances'
import { EARTH_RODS, SOILS } from '../../src/catalog/soils'

test('every soil lies between its ends and names its source', () => {
  expect(new Set(SOILS.map(({ id }) => id)).size).toBe(SOILS.length)
  for (const { id, ohmM, leastOhmM, mostOhmM, source } of SOILS) {
    expect(ohmM, id).toBeGreaterThanOrEqual(leastOhmM)
    expect(ohmM, id).toBeLessThanOrEqual(mostOhmM)
    expect(source, id).not.toBe('')
  }
})

test('every rod is many times longer than thick, as its formula asks', () => {
  for (const { id, lengthM, diameterMm } of EARTH_RODS)
    expect(lengthM / (diameterMm / 1000), id).toBeGreaterThan(40)
})

test('a primary road asks for more height than a secondary one, and a railway for most', () => {
  const metres = (id: string) => CLEARANCES.find((clearance) => clearance.id === id)!.metres
  // SS0440, p. 1-25: 14 and 18 ft.
  expect(metres('secondary-road')).toBeCloseTo(4.267, 3)
  expect(metres('primary-road')).toBeCloseTo(5.486, 3)
  expect(metres('railway-civil')).toBeGreaterThan(metres('primary-road'))
})
