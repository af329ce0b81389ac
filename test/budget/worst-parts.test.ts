import { expect, test } from 'vitest'
import { worstCorner } from '../../src/budget/envelope'
import { partsAlone, worstBecause } from '../../src/budget/worst-parts'
import { builtInSet, builtInSupply, builtInWire } from '../reference/built-in-entry'
import { DRY, rowOfSets } from '../reference/test-circuit'

const common = builtInSet('common-1-ren')

test('a battery that fails only when it is spent and the wire is hot is told by just these', () => {
  // Eight D cells over 1 km: 12 V over 131 + 400 + 1 Ω are 22.5 mA, 20 are needed; at 50 °C 21.9 mA; at 0.9 V a cell 13.5 mA.
  const model = rowOfSets([common, common], builtInWire('wd-1a'), 1000, builtInSupply('eight-d-cells'))
  const worst = worstCorner(model, DRY, [])
  expect(worst.verdict).toBe('fails')
  const because = worstBecause(model, DRY, worst.conditions)!
  expect(because.parts).toEqual(['battery'])
  expect(because.check).toMatchObject({ kind: 'loop' })
  const alone = Object.fromEntries(partsAlone(model, DRY, []).map((part) => [part.part, part]))
  expect(alone.battery?.verdict).toBe('fails')
  expect(alone.hot?.verdict).not.toBe('fails')
  expect(alone.battery!.reach.factor).toBeLessThan(alone.hot!.reach.factor)
})

test('each part that is named is needed: without it the circuit would not fail', () => {
  const crank = builtInSet('crank-1600')
  const model = rowOfSets([crank, crank], builtInWire('wd-1a'), 25_000)
  const worst = worstCorner(model, DRY, [])
  const because = worstBecause(model, DRY, worst.conditions)
  expect(because?.parts.length).toBeGreaterThan(0)
  for (const part of because!.parts) {
    const without = {
      ...worst.conditions,
      ...((part === 'wet' || part === 'dry') && { weather: DRY.weather }),
      ...((part === 'hot' || part === 'cold') && { wireTempC: DRY.wireTempC }),
      ...(part === 'ringing' && { ringFactor: 1 }),
    }
    expect(worstBecause(model, DRY, without)?.parts ?? []).not.toEqual(because!.parts)
  }
})

test('a circuit that holds in the worst weather has nothing to be named', () => {
  const crank = builtInSet('crank-1600')
  const model = rowOfSets([crank, crank], builtInWire('wd-1a'), 500)
  expect(worstBecause(model, DRY, worstCorner(model, DRY, []).conditions)).toBeNull()
})
