import { describe, expect, test } from 'vitest'
import { gaugeOf } from '../../src/field/gauge'
import {
  onlyTheWay,
  probeOf,
  type Stand,
  standAtStation,
  standNowhere,
  standOnLine,
} from '../../src/field/probe'
import { DRY, plainSet, rowOfSets } from '../reference/test-circuit'
import { TEST_WIRE } from './field-plan'

// Wire that has ohms and capacitance, and no leakage to speak of: what an instrument reads is then a sum of resistors.
const WIRE = { ...TEST_WIRE, dryMicroSPerKm: 0, loopMilliHPerKm: 0, spoolsM: [] }
const set = plainSet({
  offHook: { dcOhms: 200, acOhms: 600, minMA: 20 },
  ringer: { ohms: 2000, minVolts: 16 },
  generator: { volts: 80, hz: 20, ohms: 500 },
})
// s0 ── 260 Ω ── s1 ── 260 Ω ── s2, a telephone at each
const MODEL = rowOfSets([set, set, set], WIRE, 2000)
const read = (
  stand: Stand,
  what: 'loopOhms' | 'nanoF' | 'ringVolts' | 'lossDb',
  far: 'open' | 'short' | 'set',
) => gaugeOf(probeOf(stand, what, far)!, DRY, [])

const along = (ohms: number, other: number) => 1 / (1 / ohms + 1 / other)

describe('an instrument at the end of a row of stations', () => {
  const stand = standAtStation(MODEL, 's0', 's2')!
  test('reads the loop of a sound line that is joined at the far end', () => {
    expect(read(stand, 'loopOhms', 'short').sound()[0]).toBeCloseTo(520, 3)
  })
  test('reads a short 3 km out as the ohms up to it and its own', () => {
    const at = read(stand, 'loopOhms', 'open').at('l1', 1000)
    expect(at.first('across', 7)).toBeCloseTo(390 + 7, 3)
  })
  test('reads a leak beside the rest of the loop', () => {
    const at = read(stand, 'loopOhms', 'short').at('l0', 500)
    expect(at.first('across', 1000)).toBeCloseTo(65 + along(1000, 455), 3)
  })
  test('reads a bad joint into the loop, and a break as no loop', () => {
    const at = read(stand, 'loopOhms', 'short').at('l1', 100)
    expect(at.first('along', 40)).toBeCloseTo(560, 3)
    expect(at.first('broken', 0)).toBeGreaterThan(1e8)
  })
  test('reads the capacitance up to a break', () => {
    // 2.5 km of 60 nF/km; at 1 Hz the ohms take less than a millionth of it.
    expect(read(stand, 'nanoF', 'open').at('l1', 500).first('broken', 0)).toBeCloseTo(150, 3)
  })
  test('sees the bell at the far end where it is left on', () => {
    expect(read(stand, 'loopOhms', 'set').sound()[0]).toBeCloseTo(260 + along(2000, 260 + 2000), 3)
  })
})

test('an instrument in the middle sees nothing behind it', () => {
  const stand = standAtStation(MODEL, 's1', 's2')!
  expect(read(stand, 'loopOhms', 'short').sound()[0]).toBeCloseTo(260, 3)
  expect(read(stand, 'loopOhms', 'short').at('l0', 500).first('across', 1)).toBeCloseTo(260, 3)
  expect(standAtStation(MODEL, 's1', 's1')).toBeNull()
})

test('an instrument on a line looks to one of its ends, along what lies there', () => {
  const back = onlyTheWay(standOnLine(MODEL, 'l1', 1500, 'from')!)
  expect(read(back, 'loopOhms', 'short').sound()[0]).toBeCloseTo(195, 3)
  expect(read(back, 'loopOhms', 'open').at('l1', 900).first('across', 2)).toBeCloseTo(0.6 * 130 + 2, 3)
  // Beyond the meter a fault is not seen.
  expect(read(back, 'loopOhms', 'short').at('l1', 1800).first('across', 2)).toBeCloseTo(195, 3)
  const on = standOnLine(MODEL, 'l1', 1500, 'to')!
  expect(read(on, 'loopOhms', 'short').sound()[0]).toBeCloseTo(65, 3)
})

test('a crank rings over the line as Ohm has it, and a break silences it', () => {
  const stand = standNowhere(MODEL, 2, 0)
  const far = read({ ...stand, far: 0 }, 'ringVolts', 'set')
  // At 20 Hz the capacitance of 4 km takes less than a thousandth; bells at s1 and s2 are resistors here.
  const middle = along(2000, 260 + 2000)
  const atMiddle = (80 * middle) / (500 + 260 + middle)
  expect(far.sound()[0]).toBeCloseTo((atMiddle * 2000) / 2260, 0)
  expect(far.at('l0', 10).first('broken', 0)).toBeLessThan(0.01)
})
