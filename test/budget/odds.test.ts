import { describe, expect, test } from 'vitest'
import { drawnModel } from '../../src/budget/drawn-model'
import { oddsOf, wilson } from '../../src/budget/odds'
import { seededNormal } from '../../src/budget/seeded'
import type { Supply } from '../../src/catalog/supply'
import { builtInSet, builtInWire } from '../reference/built-in-entry'
import { DRY, OHMS_ONLY, plainSet, rowOfSets } from '../reference/test-circuit'

const SAMPLES = { samples: 2000, seed: 1 }
const offHook = { dcOhms: 200, acOhms: 600, minMA: 20 }
const battery = (volts: number, spread: Supply['spread']): Supply => ({
  ...{ id: 'b', name: 'Battery', kind: 'feed', ohms: 0, source: 'invented' },
  volts,
  ...(spread && { spread }),
})

/** Φ by Abramowitz and Stegun, Handbook of Mathematical Functions (1964), 26.2.17: within 7.5e-8. */
function normalShare(x: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(x))
  const poly =
    t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))))
  const tail = (Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI)) * poly
  return x >= 0 ? 1 - tail : tail
}

describe('of one figure that varies', () => {
  // A bell on no wire gets the volts of its source, 40 V; it needs `least`, within 25 % for 95 of a hundred: P(least × e^σz ≤ 40).
  const ring = { volts: 40, hz: 20, ohms: 1e-6 }
  const oddsAt = (minVolts: number, pct: number) => {
    const bell = plainSet({ offHook, ringer: { ohms: 7000, minVolts }, spread: { 'ringer.minVolts': pct } })
    const source = { ...battery(48, undefined), ring }
    return oddsOf(rowOfSets([plainSet({ offHook }), bell], OHMS_ONLY, 1e-3, source), DRY, SAMPLES)
  }
  test.each([
    [38, 25],
    [40, 25],
    [44, 25],
    [30, 60],
  ])('the share that works is the log-normal law’s: %f V needed, spread of %f %%', (least, pct) => {
    const share = normalShare(Math.log(40 / least) / (Math.log(1 + pct / 100) / 1.96))
    const { today } = oddsAt(least, pct)
    // 3.3 standard deviations: one in a thousand such tests would stray by chance, and the seed is fixed.
    expect(Math.abs(today.works - share)).toBeLessThan(3.3 * Math.sqrt((share * (1 - share)) / 2000))
    expect(today.low).toBeLessThanOrEqual(today.works)
    expect(today.high).toBeGreaterThanOrEqual(today.works)
  })
  test('all of the doubt hangs on it', () => {
    const [tip, ...others] = oddsAt(40, 25).tips
    expect(tip).toMatchObject({ what: 'ringer.minVolts', entry: 'plain', at: 's1' })
    expect(tip!.share).toBeGreaterThan(0.97)
    expect(others).toEqual([])
  })
})

test('the doubt is shared out as the variances are, where the margin is a product of two figures', () => {
  // ln (V / V least) of two independent log-normal figures: variances add.
  const ring = { volts: 40, hz: 20, ohms: 1e-6 }
  const bell = plainSet({ offHook, ringer: { ohms: 7000, minVolts: 38 }, spread: { 'ringer.minVolts': 30 } })
  const source = { ...battery(48, { 'ring.volts': 15 }), ring }
  const { tips } = oddsOf(rowOfSets([plainSet({ offHook }), bell], OHMS_ONLY, 1e-3, source), DRY, {
    samples: 5000,
    seed: 3,
  })
  const variance = (pct: number) => Math.log(1 + pct / 100) ** 2
  const share = variance(30) / (variance(30) + variance(15))
  expect(tips.map(({ what }) => what)).toEqual(['ringer.minVolts', 'ring.volts'])
  expect(tips[0]!.share).toBeCloseTo(share, 1)
  expect(tips[1]!.share).toBeCloseTo(1 - share, 1)
})

test('what is printed without a spread is exact: all work or none', () => {
  const { spread: _, ...exact } = builtInSet('crank-1600')
  const { spread: __, ...wire } = builtInWire('wd-1a')
  const odds = (wireM: number) => oddsOf(rowOfSets([exact, exact], wire, wireM), DRY, SAMPLES)
  expect(odds(500)).toMatchObject({ today: { works: 1, high: 1 }, worst: { works: 1 }, tips: [] })
  expect(odds(500_000)).toMatchObject({ today: { works: 0, low: 0 }, worst: { works: 0 }, tips: [] })
})

test('a circuit in which something is missing never works', () => {
  const one = rowOfSets([builtInSet('crank-1600')], builtInWire('wd-1a'), 500)
  expect(oddsOf(one, DRY, SAMPLES).today.works).toBe(0)
})

test('the same seed gives the same odds, another seed others', () => {
  const set = builtInSet('crank-1600')
  const model = rowOfSets([set, set], builtInWire('wd-1a'), 16_000)
  const few = (seed: number) => oddsOf(model, DRY, { samples: 200, seed })
  expect(few(5)).toEqual(few(5))
  expect(few(5)).not.toEqual(few(6))
})

test('one lot of wire has one value for all its lines, every set its own', () => {
  const set = builtInSet('crank-1600')
  const { figures, draw } = drawnModel(rowOfSets([set, set, set], builtInWire('wd-1a'), 1000))
  const normal = seededNormal(2)
  const { lines, sets } = draw(Float64Array.from(figures, normal))
  expect(lines[0]!.wire).toBe(lines[1]!.wire)
  expect(lines[0]!.wire.loopOhmPerKm).not.toBe(builtInWire('wd-1a').loopOhmPerKm)
  expect(new Set(sets.map((each) => each.set.ringer!.minVolts)).size).toBe(3)
})

test('the interval is Wilson’s', () => {
  // E. B. Wilson's interval as worked in D. G. Altman et al., Statistics with Confidence, 2nd ed. (2000), p. 46: 81 of 263 give
  // 0.255 to 0.366; with none of 20, 0 to 0.161 (from memory).
  expect(wilson(81, 263)).toMatchObject({ low: expect.closeTo(0.255, 3), high: expect.closeTo(0.366, 3) })
  expect(wilson(0, 20)).toMatchObject({ low: 0, high: expect.closeTo(0.161, 3) })
  expect(wilson(20, 20)).toMatchObject({ high: 1, low: expect.closeTo(1 - 0.161, 3) })
})
