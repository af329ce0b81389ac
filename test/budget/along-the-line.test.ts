import { describe, expect, test } from 'vitest'
import { dcVoltsAlong, ringVoltsAlong } from '../../src/budget/along-the-line'
import { circuitRows } from '../../src/budget/circuit-rows'
import { builtInSet, builtInSupply, builtInWire } from '../reference/built-in-entry'
import { DRY, rowOfSets } from '../reference/test-circuit'

const crank = builtInSet('crank-1600')
const common = builtInSet('common-1-ren')

describe('ring volts along the wire', () => {
  // s0 ──3 km── s1 ──3 km── s2, every set with a crank
  const model = rowOfSets([crank, crank, crank], builtInWire('wd-1a'), 3000)
  const points = ringVoltsAlong(model, DRY, 's0', 's2')

  test('end at the set with the volts of its row', () => {
    const row = circuitRows(model, DRY).ringing.find(({ from, to }) => from === 's0' && to === 's2')!
    expect(points.at(-1)!.volts).toBeCloseTo(row.volts, 9)
  })
  test('name the stations on the way and the wire up to them', () => {
    const named = points.filter(({ station }) => station !== null)
    expect(named.map(({ station, wireM }) => [station, Math.round(wireM)])).toEqual([
      ['s0', 0],
      ['s1', 3000],
      ['s2', 6000],
    ])
  })
  test('fall from the crank outward', () => {
    const volts = points.map((point) => point.volts)
    expect(volts).toEqual([...volts].sort((a, b) => b - a))
  })
  test('are none where nobody can ring', () => {
    expect(ringVoltsAlong(rowOfSets([common, common], builtInWire('wd-1a'), 3000), DRY, 's0', 's1')).toEqual(
      [],
    )
  })
})

describe('direct volts along the wire', () => {
  test('end at the set with its current times its ohms', () => {
    const model = rowOfSets([common, common], builtInWire('wd-1a'), 3000, builtInSupply('two-9-volt'))
    const row = circuitRows(model, DRY).loop.find(({ station }) => station === 's1')!
    const last = dcVoltsAlong(model, DRY, 's1').at(-1)!
    expect(last.volts).toBeCloseTo((row.mA / 1000) * common.offHook.dcOhms, 9)
  })
  test('of a ringdown unit end at the set on its own side', () => {
    const model = rowOfSets([common, common], builtInWire('wd-1a'), 3000, builtInSupply('ringdown-24'))
    const row = circuitRows(model, DRY).loop.find(({ station }) => station === 's1')!
    const points = dcVoltsAlong(model, DRY, 's1')
    expect(points.at(-1)!.volts).toBeCloseTo((row.mA / 1000) * common.offHook.dcOhms, 9)
    expect(points[0]!.station).toBe('s0')
  })
})
