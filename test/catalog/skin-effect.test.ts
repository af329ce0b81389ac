import { describe, expect, test } from 'vitest'
import { lineConstants, seriesOhmPerKm } from '../../src/budget/line-constants'
import { seriesOfSolid, wireImpedanceRatio } from '../../src/catalog/skin-effect'
import { WIRES } from '../../src/catalog/wires'

/** ber and bei of order 0 and their slopes by their power series, which share nothing with the continued fraction. */
function kelvin(x: number) {
  let [ber, bei, slopeBer, slopeBei] = [0, 0, 0, 0]
  // Σ (j x²/4)ᵏ / (k!)²
  let term = 1
  for (let k = 0; k < 120; k++) {
    const slope = (2 * k * term) / x
    if (k % 4 === 0) [ber, slopeBer] = [ber + term, slopeBer + slope]
    if (k % 4 === 1) [bei, slopeBei] = [bei + term, slopeBei + slope]
    if (k % 4 === 2) [ber, slopeBer] = [ber - term, slopeBer - slope]
    if (k % 4 === 3) [bei, slopeBei] = [bei - term, slopeBei - slope]
    term *= (x * x) / 4 / (k + 1) ** 2
  }
  return { ber, bei, slopeBer, slopeBei }
}

describe('the skin effect', () => {
  test('raises the resistance of a round wire as Kelvin’s functions have it', () => {
    for (const x of [0.3, 1, 2, 3, 4.5, 6, 8]) {
      const { ber, bei, slopeBer, slopeBei } = kelvin(x)
      // R/R₀ = (x/2) (ber bei′ − bei ber′) / (ber′² + bei′²): Lord Kelvin (1889), from memory.
      const square = slopeBer ** 2 + slopeBei ** 2
      const ratio = wireImpedanceRatio(x)
      expect(ratio.re).toBeCloseTo(((x / 2) * (ber * slopeBei - bei * slopeBer)) / square, 9)
      expect(ratio.im).toBeCloseTo(((x / 2) * (ber * slopeBer + bei * slopeBei)) / square, 9)
    }
  })

  test('goes with the root of frequency where it is strong, and never lowers the resistance', () => {
    // R/R₀ → x/(2√2) + 1/4.
    expect(wireImpedanceRatio(40).re).toBeCloseTo(40 / Math.SQRT2 / 2 + 0.25, 1)
    let before = 1
    for (let x = 0.1; x < 40; x += 0.1) {
      const { re } = wireImpedanceRatio(x)
      expect(re).toBeGreaterThanOrEqual(before)
      before = re
    }
  })

  test('leaves direct current and the inductance at low frequency as they are', () => {
    const fence = { conductors: 2, ohmPerKm: 69, henryPerKm: 0.0122, relativePermeability: 100 } as const
    expect(seriesOfSolid(fence, 0)).toEqual({ resistance: 69, reactance: 0 })
    const slow = seriesOfSolid(fence, 1)
    expect(slow.resistance / 69).toBeCloseTo(1, 5)
    expect(slow.reactance / (2 * Math.PI * 0.0122)).toBeCloseTo(1, 4)
  })

  test('is the same for each of two wires in series as for one of them', () => {
    const one = { conductors: 1, ohmPerKm: 35, henryPerKm: 0.006, relativePermeability: 150 } as const
    const two = { conductors: 2, ohmPerKm: 70, henryPerKm: 0.012, relativePermeability: 150 } as const
    expect(seriesOfSolid(two, 1000).resistance).toBeCloseTo(2 * seriesOfSolid(one, 1000).resistance, 9)
    expect(seriesOfSolid(two, 1000).reactance).toBeCloseTo(2 * seriesOfSolid(one, 1000).reactance, 9)
  })

  test('makes fence wire lose more speech than its direct-current resistance tells, and no more ringing', () => {
    const fence = lineConstants(WIRES.find(({ id }) => id === 'fence-steel-2-5')!, 'dry', 20)
    const { iron: _, ...plain } = fence
    expect(seriesOhmPerKm(fence, 1000).re / seriesOhmPerKm(plain, 1000).re).toBeGreaterThan(1.2)
    expect(seriesOhmPerKm(fence, 20).re / seriesOhmPerKm(plain, 20).re).toBeLessThan(1.001)
  })
})
