import { describe, expect, test } from 'vitest'
import { completenessOf } from '../../src/budget/completeness'
import { builtInSet, builtInSupply, builtInWire } from '../reference/built-in-entry'
import { rowOfSets } from '../reference/test-circuit'

const wire = builtInWire('wd-1a')
const crank = builtInSet('crank-1600')
const common = builtInSet('common-1-ren')
const missing = (...row: Parameters<typeof rowOfSets>) => completenessOf(rowOfSets(...row)).missing
const notes = (...row: Parameters<typeof rowOfSets>) => completenessOf(rowOfSets(...row)).notes

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
      { code: 'no-call', a: 's0', b: 's1' },
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
