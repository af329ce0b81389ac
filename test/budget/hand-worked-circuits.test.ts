import { describe, expect, test } from 'vitest'
import { circuitRows } from '../../src/budget/circuit-rows'
import type { TelephoneSet } from '../../src/catalog/telephone-set'
import { DRY, OHMS_ONLY, plainSet, rowOfSets } from '../reference/test-circuit'

/** Resistance alone, 100 Ω of loop per km, so that each figure below is a divider worked by hand. */
const WIRE = { ...OHMS_ONLY, loopOhmPerKm: 100 }

const CRANK = plainSet({
  talk: 'local',
  offHook: { dcOhms: 200, acOhms: 600, minMA: 0 },
  ringer: { ohms: 2000, minVolts: 15 },
  generator: { volts: 90, hz: 20, ohms: 500 },
})
const COMMON = plainSet({
  offHook: { dcOhms: 200, acOhms: 600, minMA: 20 },
  ringer: { ohms: 2000, microF: 1, minVolts: 15 },
})
const FEED = { id: 'plain-feed', name: 'Plain feed', volts: 24, ohms: 400, source: 'worked by hand' } as const

describe('two crank sets at the ends of 200 Ω of wire', () => {
  // 2 km of 100 Ω/km; each bell 2000 Ω; 90 V behind 500 Ω.
  const { ringing, voice } = circuitRows(rowOfSets([CRANK, CRANK], WIRE, 2000), DRY)
  test('the cranking set’s own bell is off the line: 90 V divide over 500 + 200 + 2000 Ω', () => {
    expect(ringing).toHaveLength(2)
    for (const row of ringing) expect(row.volts).toBeCloseTo((90 * 2000) / 2700, 6)
    expect(ringing.map(({ from, to }) => [from, to])).toEqual([
      ['s0', 's1'],
      ['s1', 's0'],
    ])
  })
  test('speech: 1 V behind 600 Ω gives 600/1400 V beyond 200 Ω, where 600/1200 V stood without it', () => {
    for (const row of voice) expect(row.lossDb).toBeCloseTo(20 * Math.log10(1400 / 1200), 6)
  })
})

test('with weak ringing every bell has so much less', () => {
  const model = rowOfSets([CRANK, CRANK], WIRE, 2000)
  const [full] = circuitRows(model, DRY).ringing
  const [weak] = circuitRows(model, { ...DRY, ringFactor: 0.9 }).ringing
  expect(weak!.volts / full!.volts).toBeCloseTo(0.9, 9)
})

test('of two sets the worse ear sets the limit', () => {
  const deaf = { ...CRANK, id: 'deaf', maxLossDb: 10 }
  expect(circuitRows(rowOfSets([CRANK, deaf], WIRE, 2000), DRY).voice.map((row) => row.maxDb)).toEqual([
    10, 10,
  ])
})

describe('a feed of 24 V behind 400 Ω at one end of 200 Ω, both sets off hook', () => {
  const mA = (supply: object) => {
    const { loop } = circuitRows(
      rowOfSets([COMMON, COMMON], WIRE, 2000, { ...FEED, kind: 'feed', ...supply }),
      DRY,
    )
    return Object.fromEntries(loop.map((row) => [row.station, row.mA]))
  }
  // The near set of 200 Ω beside the far one behind its wire, 400 Ω: 133.3 Ω together.
  const near = (400 * 200) / 600
  test('divides over feed, near set, and wire with far set', () => {
    const volts = (24 * near) / (400 + near)
    expect(mA({}).s0).toBeCloseTo((1000 * volts) / 200, 6)
    expect(mA({}).s1).toBeCloseTo((1000 * volts) / 400, 6)
  })
  test('a lamp takes its volts and adds its ohms', () => {
    const volts = ((24 - 2) * near) / (400 + 50 + near)
    expect(mA({ indicator: { forwardVolts: 2, ohms: 50 } }).s1).toBeCloseTo((1000 * volts) / 400, 6)
  })
  test('a source that would give more than its limit gives just that', () => {
    const { s0, s1 } = mA({ maxMA: 25 })
    expect(s0! + s1!).toBeCloseTo(25, 6)
    expect(s0! / s1!).toBeCloseTo(2, 6)
  })
})

test('a bell without a capacitor draws current with its set on hook, one with it none', () => {
  // Three sets, the middle one on hook: its coil of 2000 Ω hangs across the pair.
  const wired = (middle: TelephoneSet) =>
    circuitRows(rowOfSets([COMMON, middle, COMMON], WIRE, 1000, { ...FEED, kind: 'feed' }), DRY).loop.find(
      ({ call, station }) => call.includes('s0') && call.includes('s2') && station === 's2',
    )!.mA
  const open = { ...COMMON, id: 'open', ringer: { ohms: 2000, minVolts: 15 } }
  // Beyond the middle: 100 Ω of wire and 200 Ω; with the coil across it 300 ∥ 2000.
  const solve = (beyond: number) => {
    const branch = 100 + beyond
    const across = (200 * branch) / (200 + branch)
    const volts = (24 * across) / (400 + across)
    return (1000 * ((volts * beyond) / branch)) / 300
  }
  expect(wired(COMMON)).toBeCloseTo(solve(300), 6)
  expect(wired(open)).toBeCloseTo(solve((300 * 2000) / 2300), 6)
})

test('a ringdown unit adds its loss between its sides, and none on one side', () => {
  const unit = {
    ...FEED,
    kind: 'ringdown',
    insertionDb: 1.5,
    ring: { volts: 75, hz: 20, ohms: 500 },
  } as const
  const plain = circuitRows(rowOfSets([COMMON, COMMON, COMMON], WIRE, 1000), DRY).voice
  const through = circuitRows(rowOfSets([COMMON, COMMON, COMMON], WIRE, 1000, unit), DRY).voice
  const loss = (rows: typeof plain, from: string, to: string) =>
    rows.find((row) => row.from === from && row.to === to)!.lossDb
  expect(loss(through, 's0', 's2') - loss(plain, 's0', 's2')).toBeCloseTo(1.5, 6)
  expect(loss(through, 's1', 's2') - loss(plain, 's1', 's2')).toBeCloseTo(0, 6)
})
