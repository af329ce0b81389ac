import { describe, expect, test } from 'vitest'
import {
  fieldText,
  formatBearingDeg,
  formatCount,
  formatDb,
  formatDistanceM,
  formatLengthM,
  formatList,
  formatMA,
  formatMassKg,
  formatOhms,
  formatRunM,
  formatTempC,
  formatVolts,
  plainNumber,
  type Quantity,
  UNITS,
  unitOf,
} from '../../src/words/units'

/**
 * Exact factors: NIST Special Publication 811 (2008), appendix B.8. The foot is 0.3048 m, the mile 1609.344 m, the pound
 * 0.45359237 kg, the pound-force 4.4482216152605 N, exactly; °F = 1.8 °C + 32.
 */
const EXACT: readonly { quantity: Quantity; us: number; si: number }[] = [
  { quantity: 'lengthM', us: 1, si: 0.3048 },
  { quantity: 'lengthKm', us: 1, si: 1609.344 },
  { quantity: 'massKg', us: 1, si: 0.45359237 },
  { quantity: 'forceN', us: 1, si: 4.4482216152605 },
  { quantity: 'tempC', us: 32, si: 0 },
  { quantity: 'tempC', us: 212, si: 100 },
  { quantity: 'tempC', us: -40, si: -40 },
  { quantity: 'ohmPerKm', us: 1.609344, si: 1 },
  { quantity: 'nanoFPerKm', us: 1.609344, si: 1 },
  { quantity: 'kgPerKm', us: 1, si: 0.45359237 / 1.609344 },
  { quantity: 'depthM', us: 1, si: 0.0254 },
  { quantity: 'tempStepC', us: 18, si: 10 },
  { quantity: 'perC', us: 1, si: 1.8 },
  { quantity: 'ohm', us: 1, si: 1 },
]

describe('units', () => {
  test.each(EXACT)('$us US of $quantity is $si in SI', ({ quantity, us, si }) => {
    expect(unitOf(quantity, 'us').toSi(us)).toBeCloseTo(si, 12)
    expect(unitOf(quantity, 'us').fromSi(si)).toBeCloseTo(us, 12)
  })

  test.each(Object.keys(UNITS) as Quantity[])('%s comes back from each system as it went', (quantity) => {
    for (const system of ['metric', 'us'] as const) {
      const unit = unitOf(quantity, system)
      expect(unit.toSi(unit.fromSi(123.456))).toBeCloseTo(123.456, 9)
    }
  })

  test('electrical units are the same in both systems', () => {
    for (const quantity of ['ohm', 'volt', 'mA', 'db', 'hz', 'pct'] as const)
      expect(unitOf(quantity, 'us').fromSi(7)).toBe(unitOf(quantity, 'metric').fromSi(7))
  })
})

describe('text', () => {
  test('a run is told in metres up to a kilometre and in feet up to a tenth of a mile', () => {
    expect(formatRunM(318.4, 'metric')).toBe('318 m')
    expect(formatRunM(999.6, 'metric')).toBe('1.00 km')
    expect(formatRunM(6840, 'metric')).toBe('6.84 km')
    expect(formatRunM(100, 'us')).toBe('328 ft')
    expect(formatRunM(1609.344, 'us')).toBe('1.00 mi')
  })

  test('measured figures have three digits that count', () => {
    expect(formatVolts(8.123)).toBe('8.12 V')
    expect(formatVolts(42.37)).toBe('42.4 V')
    expect(formatVolts(99.96)).toBe('100 V')
    expect(formatMA(-0.001)).toBe('0.00 mA')
    expect(formatDb(11.26)).toBe('11.3 dB')
  })

  test('figures that were asked for stand as they were typed', () => {
    expect(plainNumber(18)).toBe('18')
    expect(plainNumber(0.5)).toBe('0.5')
    expect(fieldText(8, unitOf('lengthM', 'metric'))).toBe('8')
    expect(fieldText(8, unitOf('lengthM', 'us'))).toBe('26.2')
  })

  test('names are listed as people list them', () => {
    expect(formatList(['A'])).toBe('A')
    expect(formatList(['A', 'B'])).toBe('A and B')
    expect(formatList(['A', 'B', 'C'])).toBe('A, B and C')
    expect(formatList(['A', 'B', 'C', 'D'])).toBe('A, B and 2 more')
    expect(formatCount(1, 'splice')).toBe('1 splice')
    expect(formatCount(2, 'supply', 'supplies')).toBe('2 supplies')
  })
})

// Factors by definition: foot 0.3048 m, mile 1609.344 m, pound 0.45359237 kg; °F = 9/5 °C + 32.
describe('a quantity is shown', () => {
  test('in metres, or in feet', () => {
    expect(formatLengthM(304.8, 'metric')).toBe('305 m')
    expect(formatLengthM(304.8, 'us')).toBe('1000 ft')
  })
  test('in kilometres, or in statute miles', () => {
    expect(formatDistanceM(1609.344, 'metric')).toBe('1.61 km')
    expect(formatDistanceM(1609.344, 'us')).toBe('1.00 mi')
  })
  test('in kilograms, or in pounds', () => {
    expect(formatMassKg(0.45359237 * 48, 'us')).toBe('48.0 lb')
    expect(formatMassKg(13.53, 'metric')).toBe('13.5 kg')
  })
  test('in degrees Celsius, or Fahrenheit, and never as minus nought', () => {
    expect(formatTempC(20, 'us')).toBe('68 °F')
    expect(formatTempC(-0.3, 'metric')).toBe('0 °C')
    expect(formatTempC(-40, 'us')).toBe('-40 °F')
  })
  test('as a bearing in three figures, north as 000', () => {
    expect([7.4, 75.6, 359.7, -10].map(formatBearingDeg)).toEqual(['007°', '076°', '000°', '350°'])
  })
  test('with the digits that a field meter can tell apart', () => {
    expect([8.314, 99.94, 1372.4].map(formatOhms)).toEqual(['8.3 Ω', '99.9 Ω', '1372 Ω'])
  })
})
