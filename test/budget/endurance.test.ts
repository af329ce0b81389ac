import { describe, expect, test } from 'vitest'
import { circuitRows } from '../../src/budget/circuit-rows'
import { enduranceOf } from '../../src/budget/endurance'
import { ALKALINE_9_VOLT, ampHoursAt } from '../../src/catalog/cells'
import { builtInSet, builtInSupply, builtInWire } from '../reference/built-in-entry'
import { DRY, rowOfSets } from '../reference/test-circuit'

const common = builtInSet('common-1-ren')
const wire = builtInWire('wd-1a')

describe('a talk battery in one leg', () => {
  const model = rowOfSets([common, common], wire, 1600, builtInSupply('two-9-volt'))
  test('is drained by the current of the call and by nothing else', () => {
    const lasting = enduranceOf(model, DRY, 60, 20)!
    const call = circuitRows(model, DRY).loop.find(({ station }) => station === 's0')!
    expect(lasting.talkMA).toBeCloseTo(call.mA, 9)
    expect(lasting.idleMA).toBe(0)
    // One hour a day at that drain, from what the cell gives at it.
    expect(lasting.days).toBeCloseTo((ampHoursAt(ALKALINE_9_VOLT, call.mA, 20) * 1000) / call.mA, 9)
  })
  test('serves a shorter time in the cold', () => {
    expect(enduranceOf(model, DRY, 60, -20)!.days).toBeLessThan(enduranceOf(model, DRY, 60, 20)!.days / 2)
  })
  test('lasts for ever in a net that never talks', () => {
    expect(enduranceOf(model, DRY, 0, 20)!.days).toBe(Number.POSITIVE_INFINITY)
  })
})

test('a bell without a capacitor drains a feed day and night', () => {
  const dripping = { ...common, ringer: { ohms: 1600, minVolts: 20 } }
  const lasting = enduranceOf(
    rowOfSets([dripping, dripping], wire, 1600, builtInSupply('feed-24')),
    DRY,
    60,
    20,
  )!
  expect(lasting.idleMA).toBeGreaterThan(10)
})

test('a plant on the mains has no days to count', () => {
  expect(
    enduranceOf(rowOfSets([common, common], wire, 1600, builtInSupply('feed-48')), DRY, 60, 20),
  ).toBeUndefined()
})
