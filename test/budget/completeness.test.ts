import { describe, expect, test } from 'vitest'
import { completenessOf } from '../../src/budget/completeness'
import { builtInSet, builtInSupply, builtInWire } from '../reference/built-in-entry'
import { DRY, rowOfSets } from '../reference/test-circuit'

const wire = builtInWire('wd-1a')
const crank = builtInSet('crank-1600')
const common = builtInSet('common-1-ren')
const missing = (...row: Parameters<typeof rowOfSets>) => completenessOf(rowOfSets(...row), DRY).missing
const notes = (...row: Parameters<typeof rowOfSets>) => completenessOf(rowOfSets(...row), DRY).notes

describe('a circuit lacks', () => {
  test('nothing where each set has a crank and a bell', () => {
    expect(missing([crank, crank], wire, 1000)).toEqual([])
  })
  test('a supply where a common-battery set has none', () => {
    expect(missing([common, crank], wire, 1000)).toContainEqual({ code: 'no-supply', station: 's0' })
  })
  test('a bell or lamp where nobody can ring', () => {
    const mute = builtInSet('common-no-bell')
    expect(missing([mute, mute], wire, 1000, builtInSupply('feed-24'))).toEqual([
      { code: 'no-call', a: 's0', b: 's1', lamp: null },
    ])
  })
  test('no call where the feed lights a lamp', () => {
    const mute = builtInSet('common-no-bell')
    expect(missing([mute, mute], wire, 1000, builtInSupply('feed-24-lamp'))).toEqual([])
  })
  test('a second telephone where there is but one', () => {
    expect(missing([crank], wire, 1000)).toHaveLength(1)
  })
  test('nothing for want of a bell on a series battery, which is told in a note', () => {
    expect(missing([common, common], wire, 1000, builtInSupply('two-9-volt'))).toEqual([])
    expect(notes([common, common], wire, 1000, builtInSupply('two-9-volt'))[0]).toEqual({
      code: 'battery-rings-nothing',
    })
  })
})

test('bells beyond what the ring source is made for are told in a note', () => {
  const many = Array.from({ length: 8 }, () => common)
  expect(notes(many, wire, 100, builtInSupply('feed-48'))).toContainEqual(
    expect.objectContaining({ code: 'bells-over-load', load: expect.closeTo(8, 0), maxLoad: 5 }),
  )
})

test('wire that ends without a telephone is told in a note; a joint between two, and the supply, are not', () => {
  const row = rowOfSets([crank, crank, crank, crank], wire, 1000)
  const bare = (...nodes: readonly number[]) =>
    completenessOf({ ...row, sets: row.sets.filter(({ node }) => !nodes.includes(node)) }, DRY).notes
  expect(bare(3)).toEqual([{ code: 'nobody-listens', stations: ['s3'] }])
  expect(bare(1)).toEqual([])
  const feed = { supply: builtInSupply('feed-48'), node: 0 }
  const fed = { ...row, sets: row.sets.filter(({ node }) => node > 0), supply: feed }
  expect(completenessOf(fed, DRY).notes.map(({ code }) => code)).not.toContain('nobody-listens')
})

describe('a lamp at the supply', () => {
  const mute = builtInSet('common-no-bell')
  const lamp = (minMA: number) => ({
    ...builtInSupply('feed-24-lamp'),
    indicator: { forwardVolts: 0, ohms: 200, minMA },
  })
  test('calls only whoever stands there: two others have no way to call each other', () => {
    expect(missing([mute, mute, mute], wire, 1000, lamp(10))).toEqual([
      { code: 'no-call', a: 's1', b: 's2', lamp: { why: 'elsewhere', at: 's0' } },
    ])
  })
  test('that gets far less than it is seen by is no sign of a call', () => {
    // 24 V over 20 + 200 Ω, 131 Ω of wire and the set's 200 Ω: 43 mA.
    expect(missing([mute, mute], wire, 1000, lamp(55))).toEqual([
      {
        code: 'no-call',
        a: 's0',
        b: 's1',
        lamp: { why: 'dim', at: 's0', mA: expect.closeTo(24000 / (420 + wire.loopOhmPerKm), 1), minMA: 55 },
      },
    ])
    expect(missing([mute, mute], wire, 1000, lamp(40))).toEqual([])
  })
  test('cannot call the others, which is told', () => {
    expect(notes([mute, mute], wire, 1000, lamp(10))).toEqual([
      { code: 'lamp-one-way', at: 's0', others: ['s1'] },
    ])
  })
})

describe('a bell without a capacitor', () => {
  const coil = { ...common, ringer: { ohms: 1600, minVolts: 20 } }
  const feed = (offHookMA: number) => ({ ...builtInSupply('feed-48'), offHookMA })
  test('that draws as much as a lifted handset keeps the line answered', () => {
    // 48 V over 400 Ω, and 131 Ω of wire to the second: 24 mA through the first bell and 22 through both would be beyond 10.
    expect(missing([coil, common], wire, 1000, feed(10))).toEqual([
      { code: 'bell-looks-lifted', station: 's0', mA: expect.closeTo(48000 / 2000, 1), offHookMA: 10 },
    ])
    expect(missing([coil, common], wire, 1000, feed(25))).toEqual([])
  })
  test('is told where only all together draw so much', () => {
    expect(notes([coil, coil], wire, 1000, feed(25))).toContainEqual(
      expect.objectContaining({ code: 'bells-look-lifted', offHookMA: 25 }),
    )
  })
})
