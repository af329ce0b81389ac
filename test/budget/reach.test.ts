import { describe, expect, test } from 'vitest'
import { circuitRows } from '../../src/budget/circuit-rows'
import { ENVELOPE, worstCorner } from '../../src/budget/envelope'
import { FURTHEST, reachOf } from '../../src/budget/reach'
import { leastMargin, verdictOf } from '../../src/budget/verdict'
import { builtInSet, builtInSupply, builtInWire } from '../reference/built-in-entry'
import { DRY, OHMS_ONLY, plainSet, rowOfSets } from '../reference/test-circuit'

const crank = builtInSet('crank-1600')

describe('reach', () => {
  test('is the factor at which the first check is just met', () => {
    const model = rowOfSets([crank, crank], builtInWire('wd-1a'), 2000)
    const { factor, check } = reachOf(model, DRY)
    const at = (lengthFactor: number) => leastMargin(circuitRows(model, { ...DRY, lengthFactor }))!
    expect(at(factor).nepers).toBeGreaterThanOrEqual(0)
    expect(at(factor * 1.001).nepers).toBeLessThan(0)
    expect(at(factor * 1.001).check).toEqual(check)
  })

  test('of a plain loop is what Ohm’s law allows: (V / I − set) / ohms of wire', () => {
    const set = plainSet({ offHook: { dcOhms: 200, acOhms: 600, minMA: 20 }, maxLossDb: 1000 })
    const feed = { ...builtInSupply('feed-48'), ring: undefined as never, ohms: 400 }
    // One set at the feed, one 500 Ω away: the far one is the first to starve.
    const model = rowOfSets([set, set], OHMS_ONLY, 500, feed)
    const { factor } = reachOf(model, DRY)
    // Near set 200 Ω across the feed: Thevenin 48 · 200 / 600 = 16 V behind 133.33 Ω; 16 / 0.020 = 800 = 133.33 + 200 + R.
    expect(factor * 500).toBeCloseTo(800 - 400 / 3 - 200, 0)
  })

  test('is 0 where no wire at all fails, and 1000 at most', () => {
    const weak = plainSet({ offHook: { dcOhms: 5000, acOhms: 600, minMA: 20 } })
    expect(reachOf(rowOfSets([weak, weak], OHMS_ONLY, 500, builtInSupply('feed-48')), DRY).factor).toBe(0)
    const easy = plainSet({ offHook: { dcOhms: 200, acOhms: 600, minMA: 0 }, maxLossDb: 10_000 })
    expect(reachOf(rowOfSets([easy, easy], OHMS_ONLY, 1), DRY)).toEqual({ factor: FURTHEST, check: null })
  })
})

describe('the worst corner', () => {
  const model = rowOfSets([crank, crank, crank], builtInWire('wd-1a'), 4000)
  const worst = worstCorner(model, DRY, [])

  test('is wet and hot for a long field wire: more ohms, more leakage', () => {
    expect(worst.conditions).toMatchObject({ weather: 'wet', wireTempC: ENVELOPE.hottestWireC })
  })
  test('is never better than today', () => {
    expect(worst.least!.nepers).toBeLessThanOrEqual(leastMargin(circuitRows(model, DRY))!.nepers)
  })
  test('keeps the plan’s own heat where that is beyond the envelope', () => {
    const scorched = { ...DRY, wireTempC: 70 }
    expect(worstCorner(model, scorched, []).conditions.wireTempC).toBe(70)
  })
})

describe('the verdict', () => {
  const rows = { loop: [], ringing: [{ from: 'A', to: 'B', volts: 24, minVolts: 20 }], voice: [] }
  test('is thin under the comfort line of 1.25 times the least ring volts', () => {
    expect(verdictOf(rows, [])).toBe('thin')
    expect(verdictOf({ ...rows, ringing: [{ ...rows.ringing[0]!, volts: 25 }] }, [])).toBe('works')
    expect(verdictOf({ ...rows, ringing: [{ ...rows.ringing[0]!, volts: 19.9 }] }, [])).toBe('fails')
  })
  test('is fails where something is missing, whatever the figures', () => {
    expect(verdictOf({ loop: [], ringing: [], voice: [] }, ['a supply'])).toBe('fails')
  })
})
