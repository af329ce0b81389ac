import { describe, expect, test } from 'vitest'
import { addCircuit, setSet, setSupply } from '../../src/plan/circuit-edits'
import { sparePairs } from '../../src/plan/circuit-topology'
import type { CircuitId, LineId, StationId } from '../../src/plan/id'
import { setPairs, setReturn } from '../../src/plan/line-edits'
import { setElectrode, setOver } from '../../src/plan/rider-edits'
import { riddenBy } from '../../src/plan/riding'
import { ridingPlan } from './riding-plan'

const circuits = (lines: Record<string, [readonly string[], ('phantom' | 'simplex')?]>) =>
  Object.entries(lines).map(([id, [own, over]]) => ({
    id: id as CircuitId,
    lines: own as readonly LineId[],
    ...(over && { over }),
  }))
const ridden = (lines: Parameters<typeof circuits>[0]) => Object.fromEntries(riddenBy(circuits(lines)))

describe('a rider lies on', () => {
  test('the circuits that go farthest along with it, not on those that are named first', () => {
    expect(ridden({ stub: [['l']], a: [['l', 'm']], b: [['l', 'm']], ph: [['l', 'm'], 'phantom'] })).toEqual({
      ph: ['a', 'b'],
    })
  })
  test('pairs that no other rider has', () => {
    expect(ridden({ a: [['l']], b: [['l']], x: [['l'], 'simplex'], y: [['l'], 'simplex'] })).toEqual({
      x: ['a'],
      y: ['b'],
    })
  })
  test('nobody where all its pairs are spare', () => {
    expect(ridden({ x: [['l'], 'phantom'] })).toEqual({ x: [] })
  })
})

const plan = () => ridingPlan('phantom')
const [one, over, l, a] = ['one' as CircuitId, 'over' as CircuitId, 'l' as LineId, 'a' as StationId]
const soundOf = <T>(result: { ok: true; value: T } | { ok: false; problems: unknown }): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value
}

describe('with a phantom over two pairs', () => {
  test('no pair is spare, and none is lacking', () => {
    expect(sparePairs(plan(), plan().lines.get(l)!)).toBe(0)
  })
  test('the line keeps its pairs and stays a pair', () => {
    expect(setPairs(plan(), l, 1).ok).toBe(false)
    expect(setReturn(plan(), l, 'earth').ok).toBe(false)
    expect(soundOf(setPairs(plan(), l, 3)).lines.get(l)!.pairs).toBe(3)
  })
  test('no supply is put where its current would have to pass a coil', () => {
    expect(setSupply(plan(), one, { type: 'feed-48', at: a })).toEqual(plan())
    expect(setSupply(plan(), over, { type: 'feed-48', at: a })).toEqual(plan())
  })
  test('a circuit with a pair of its own needs one', () => {
    expect(setOver(plan(), over, 'pair').ok).toBe(false)
    const wide = soundOf(setPairs(plan(), l, 3))
    const own = soundOf(setOver(wide, over, 'pair'))
    expect(own.circuits.get(over)).not.toHaveProperty('over')
    expect(addCircuit(own, { id: 'more' as CircuitId, lines: [l] }).ok).toBe(false)
    const fed = setSupply(own, one, { type: 'feed-48', at: a })
    expect(fed.circuits.get(one)!.supply).not.toBeNull()
    expect(setOver(fed, over, 'phantom').ok).toBe(false)
  })
  test('a simplex in its place has an electrode at each set, also at one that is put there later', () => {
    const simplex = soundOf(setOver(setSet(plan(), over, a, null), over, 'simplex'))
    expect(simplex.circuits.get(over)!.electrodeOhms).toEqual({ b: 100 })
    const more = setSet(simplex, over, a, 'crank-1600')
    expect(more.circuits.get(over)!.electrodeOhms).toEqual({ a: 100, b: 100 })
    expect(soundOf(setElectrode(more, over, a, 40)).circuits.get(over)!.electrodeOhms).toEqual({
      a: 40,
      b: 100,
    })
    expect(setElectrode(more, over, a, -4).ok).toBe(false)
  })
})
