import { describe, expect, test } from 'vitest'
import {
  conductorBreakN,
  conductorKgPerKm,
  conductorOhmPerKm,
  conductorTempCoeffPerC,
  helixTakeUp,
  solid,
} from '../../src/catalog/conductor'
import { COPPER, GALVANISED_STEEL } from '../../src/catalog/conductor-materials'

const mixed = {
  strands: [
    { count: 4, diameterMm: 0.28, material: COPPER },
    { count: 3, diameterMm: 0.28, material: GALVANISED_STEEL },
  ],
  takeUp: 1,
}

describe('a conductor', () => {
  test('of one solid wire resists as its length over its area', () => {
    // 1 km of 1 mm² of standard copper: 1000 / 58 Ω.
    expect(conductorOhmPerKm(solid(COPPER, Math.sqrt(4 / Math.PI)))).toBeCloseTo(1000 / 58, 9)
  })

  test('of several metals resists less than any of them alone, and warms between them', () => {
    const copperAlone = conductorOhmPerKm({ ...mixed, strands: mixed.strands.slice(0, 1) })
    expect(conductorOhmPerKm(mixed)).toBeLessThan(copperAlone)
    const coefficient = conductorTempCoeffPerC(mixed)
    expect(coefficient).toBeGreaterThan(COPPER.tempCoeffPerC)
    expect(coefficient).toBeLessThan(GALVANISED_STEEL.tempCoeffPerC)
  })

  test('warms as its strands in parallel do, one by one', () => {
    const warmed = (material: typeof COPPER) => ({
      ...material,
      ohmMm2PerM: material.ohmMm2PerM * (1 + material.tempCoeffPerC),
    })
    const warm = {
      ...mixed,
      strands: mixed.strands.map((strand) => ({ ...strand, material: warmed(strand.material) })),
    }
    const rise = conductorOhmPerKm(warm) / conductorOhmPerKm(mixed) - 1
    expect(rise).toBeCloseTo(conductorTempCoeffPerC(mixed), 6)
  })

  test('that is twisted has more wire, more mass and more resistance, and no more strength', () => {
    const twisted = { ...mixed, takeUp: helixTakeUp(0.56, 25.4) }
    const ratio = conductorOhmPerKm(twisted) / conductorOhmPerKm(mixed)
    // √(1 + (0.56 π / 25.4)²), by hand.
    expect(ratio).toBeCloseTo(1.0024, 4)
    expect(conductorKgPerKm(twisted) / conductorKgPerKm(mixed)).toBeCloseTo(ratio, 12)
    expect(conductorBreakN(twisted)).toBe(conductorBreakN(mixed))
  })
})
