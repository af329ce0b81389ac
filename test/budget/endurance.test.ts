import { describe, expect, test } from 'vitest'
import { circuitRows } from '../../src/budget/circuit-rows'
import { enduranceRows, type Use } from '../../src/budget/endurance'
import { leastMargin } from '../../src/budget/verdict'
import { ampHoursAt, partUsedAt } from '../../src/catalog/cell'
import { ALKALINE_9_VOLT, ALKALINE_D } from '../../src/catalog/cells-alkaline'
import type { Supply } from '../../src/catalog/supply'
import { builtInSet, builtInSupply, builtInWire } from '../reference/built-in-entry'
import { DRY, OHMS_ONLY, plainSet, rowOfSets } from '../reference/test-circuit'

const common = builtInSet('common-1-ren')
const wire = builtInWire('wd-1a')
const HOUR: Use = { talkMinutesPerDay: 60, ringMinutesPerDay: 0, tempC: 20 }

describe('a talk battery in one leg', () => {
  const model = rowOfSets([common, common], wire, 1300, builtInSupply('eight-d-cells'))
  const [row] = enduranceRows(model, DRY, HOUR)
  test('serves until the current fails, not until it is spent', () => {
    // An attack on the program's figures: eight D cells over 1.3 km give 21 mA fresh, and fail at 1.43 V a cell; to 0.9 V a cell they
    // would last 857 days. 20 mA × (170 + 400 + 1.2) Ω are 11.4 V.
    expect(row!.until).toMatchObject({ code: 'check', check: { kind: 'loop' } })
    expect(row!.atVolts! / 8).toBeCloseTo(1.43, 2)
    const { mA } = circuitRows(model, DRY).loop[0]!
    const given = ampHoursAt(ALKALINE_D, mA, 20) * partUsedAt(ALKALINE_D, row!.atVolts! / 8)
    expect(row!.days).toBeCloseTo((given * 1000) / mA, 6)
    expect(row!.days!).toBeLessThan(857 / 2)
  })
  test('just holds at the volts it is told to fail at, and fails a little below', () => {
    const nepers = (volts: number) =>
      leastMargin(circuitRows(model, { ...DRY, batteryFactor: volts / 12 }))!.nepers
    expect(nepers(row!.atVolts! * 1.0001)).toBeGreaterThanOrEqual(0)
    expect(nepers(row!.atVolts! * 0.9999)).toBeLessThan(0)
  })
  test('serves a shorter time in the cold', () => {
    const cold = enduranceRows(model, DRY, { ...HOUR, tempC: -20 })[0]!
    expect(cold.days!).toBeLessThan(row!.days! / 2)
  })
  test('keeps in a net that never talks, and does not serve a circuit that fails already', () => {
    expect(enduranceRows(model, DRY, { ...HOUR, talkMinutesPerDay: 0 })[0]).toMatchObject({
      days: null,
      until: { code: 'keeps' },
    })
    const far = rowOfSets([common, common], wire, 20_000, builtInSupply('eight-d-cells'))
    expect(enduranceRows(far, DRY, HOUR)[0]).toMatchObject({ days: 0, until: { code: 'check' } })
  })
  test('two 9 V cells over 3 km are needed down to 1.33 V a cell', () => {
    const two = rowOfSets([common, common], wire, 3000, builtInSupply('two-9-volt'))
    const [end] = enduranceRows(two, DRY, HOUR)
    expect(end!.atVolts! / 12).toBeCloseTo(1.33, 1)
    expect(end!.days!).toBeLessThan(20 * partUsedAt(ALKALINE_9_VOLT, 6 * 1.3) + 1)
  })
})

test('a battery of an unnamed cell falls in proportion, from its nominal volts to its last', () => {
  const set = plainSet({ offHook: { dcOhms: 200, acOhms: 600, minMA: 20 } })
  const battery: Supply = {
    ...{ id: 'b', name: 'Battery', kind: 'series', source: 'invented' },
    ...{ volts: 12, ohms: 0, ampHours: 10, endVolts: 6 },
  }
  // 24 mA fresh over 100 + 400 Ω; 20 mA at 10 V, a third of the way to 6 V.
  const [row] = enduranceRows(rowOfSets([set, set], OHMS_ONLY, 100, battery), DRY, HOUR)
  expect(row).toMatchObject({ atVolts: expect.closeTo(10, 3), days: expect.closeTo(10_000 / 3 / 24, 1) })
})

test('a bell without a capacitor drains a feed day and night', () => {
  const dripping = { ...common, ringer: { ohms: 1600, minVolts: 20 } }
  const [row] = enduranceRows(
    rowOfSets([dripping, dripping], wire, 1600, builtInSupply('feed-24')),
    DRY,
    HOUR,
  )
  expect(row!.drain!.idleMA).toBeGreaterThan(10)
})

describe('a unit that takes watts of its own', () => {
  const unit: Supply = {
    ...builtInSupply('ringdown-24'),
    powerW: { idle: 7, talk: 7, ring: 7 },
    fedBy: { volts: 24, ampHours: 7, efficiencyPct: 100 },
  }
  test('of 7 W empties 24 V of 7 Ah in a day', () => {
    // Common practice: such units come with adapters of some 7 VA. 24 × 7 Wh over 7 W are 24 h.
    const [row] = enduranceRows(rowOfSets([common, common], wire, 1000, unit), DRY, HOUR)
    expect(row).toMatchObject({ days: expect.closeTo(1, 9), until: { code: 'spent' } })
  })
  test('counts each state by its hours, and what the converter loses', () => {
    const watts = {
      ...unit,
      powerW: { idle: 2, talk: 5, ring: 20 },
      fedBy: { volts: 12, ampHours: 10, efficiencyPct: 80 },
    }
    const use: Use = { talkMinutesPerDay: 120, ringMinutesPerDay: 30, tempC: 20 }
    const [row] = enduranceRows(rowOfSets([common, common], wire, 1000, watts), DRY, use)
    expect(row!.days).toBeCloseTo((12 * 10 * 0.8) / (2 * 21.5 + 5 * 2 + 20 * 0.5), 9)
  })
  test('is unknown where its watts or its battery are', () => {
    const { powerW: _, fedBy: __, ampHours: ___, ...silent } = unit
    expect(enduranceRows(rowOfSets([common, common], wire, 1000, silent), DRY, HOUR)).toMatchObject([
      { set: null, days: null, until: { code: 'unknown', lacks: 'power' } },
    ])
    const unfed = { ...silent, powerW: unit.powerW! }
    expect(enduranceRows(rowOfSets([common, common], wire, 1000, unfed), DRY, HOUR)).toMatchObject([
      { days: null, until: { code: 'unknown', lacks: 'feed' } },
    ])
  })
})

test('each local set runs down its own cells; one whose cells are not stated is unknown', () => {
  const { battery: _, ...bare } = builtInSet('crank-1600')
  const stated = { ...bare, battery: { volts: 3, ampHours: 18, talkMA: 60, idleMA: 1 } }
  expect(enduranceRows(rowOfSets([stated, bare], wire, 1000), DRY, HOUR)).toEqual([
    expect.objectContaining({ set: 's0', days: expect.closeTo(18_000 / (60 + 23), 9) }),
    expect.objectContaining({ set: 's1', days: null, until: { code: 'unknown', lacks: 'cells' } }),
  ])
})

test('a plant on the mains has no days to count', () => {
  const { powerW: _, fedBy: __, ...plant } = builtInSupply('feed-48')
  expect(enduranceRows(rowOfSets([common, common], wire, 1600, plant), DRY, HOUR)).toEqual([])
})
