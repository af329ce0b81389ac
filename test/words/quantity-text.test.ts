import { describe, expect, test } from 'vitest'
import {
  formatBearingDeg,
  formatDistanceM,
  formatLengthM,
  formatMassKg,
  formatOhms,
  formatTempC,
} from '../../src/words/quantity-text'

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
