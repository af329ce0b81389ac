import { expect, test } from 'vitest'
import { ENVELOPE, worstCorner } from '../../src/budget/envelope'
import { builtInSet, builtInWire } from '../reference/built-in-entry'
import { DRY, rowOfSets } from '../reference/test-circuit'

test('the worst weather rings weaker than today', () => {
  const crank = builtInSet('crank-1600')
  const { conditions } = worstCorner(rowOfSets([crank, crank], builtInWire('wd-1a'), 20_000), DRY, [])
  expect(conditions.weather).toBe('wet')
  expect(conditions.ringFactor).toBe(ENVELOPE.weakRing)
})
