import { describe, expect, test } from 'vitest'
import { lossAgainstHz, reachBySupply, reachByWire } from '../../src/budget/choices'
import { circuitRows } from '../../src/budget/circuit-rows'
import { reachOf } from '../../src/budget/reach'
import { BUILT_IN } from '../../src/catalog/built-in'
import { builtInSet, builtInSupply, builtInWire } from '../reference/built-in-entry'
import { DRY, rowOfSets } from '../reference/test-circuit'

const common = builtInSet('common-1-ren')

describe('loss against frequency', () => {
  test.each(['feed-48', 'ringdown-24'])('meets the row of the circuit at 1000 Hz, fed from %s', (supply) => {
    const model = rowOfSets([common, common, common], builtInWire('wd-1a'), 2000, builtInSupply(supply))
    const row = circuitRows(model, DRY).voice.find(({ from, to }) => from === 's1' && to === 's2')!
    const loss = lossAgainstHz(model, DRY, 's1', 's2')
    expect(loss.find(({ hz }) => hz === 1000)!.lossDb).toBeCloseTo(row.lossDb, 9)
  })
  test('counts what a ringdown unit takes from speech that goes through it', () => {
    const model = (supply: string) =>
      rowOfSets([common, common], builtInWire('wd-1a'), 2000, builtInSupply(supply))
    const { insertionDb } = builtInSupply('ringdown-24')
    const through = circuitRows(model('ringdown-24'), DRY).voice[0]!.lossDb
    expect(insertionDb).toBeGreaterThan(0)
    expect(through - circuitRows(model('feed-48'), DRY).voice[0]!.lossDb).toBeCloseTo(insertionDb!, 9)
    expect(lossAgainstHz(model('ringdown-24'), DRY, 's0', 's1')[4]!.lossDb).toBeCloseTo(through, 9)
  })
  test('grows with frequency on field wire, whose capacitance bridges speech', () => {
    const losses = lossAgainstHz(rowOfSets([common, common], builtInWire('wd-1a'), 8000), DRY, 's0', 's1')
    expect(losses.map(({ hz }) => hz)).toEqual([300, 400, 500, 700, 1000, 1400, 2000, 2800, 3400])
    expect(losses.at(-1)!.lossDb).toBeGreaterThan(losses[0]!.lossDb)
  })
})

describe('what each choice would give', () => {
  const model = rowOfSets([common, common], builtInWire('wd-1a'), 2000, builtInSupply('feed-48'))

  test('of the wire that is there is the circuit’s own reach', () => {
    const [choice] = reachByWire(model, DRY, [builtInWire('wd-1a')])
    expect(choice!.today).toEqual(reachOf(model, DRY))
    expect(choice!.worst.factor).toBeLessThanOrEqual(choice!.today.factor)
  })
  test('of every supply is listed where the circuit has one, else none', () => {
    expect(reachBySupply(model, DRY, BUILT_IN.supplies)).toHaveLength(BUILT_IN.supplies.length)
    expect(reachBySupply({ ...model, supply: null }, DRY, BUILT_IN.supplies)).toEqual([])
  })
})
