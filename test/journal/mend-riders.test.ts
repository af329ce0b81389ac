import { expect, test } from 'vitest'
import { formatPlan } from '../../src/files/format-plan'
import { parsePlan } from '../../src/files/parse-plan'
import { mendPlan } from '../../src/journal/mend-plan'
import type { CircuitId, LineId, StationId } from '../../src/plan/id'
import type { Circuit, Plan } from '../../src/plan/plan'
import { withCircuit, withLine } from '../../src/plan/with-feature'
import { ridingPlan } from '../plan/riding-plan'

const plan = (over: 'phantom' | 'simplex') => ridingPlan(over, { a: 50, b: 60 })
const reads = (merged: Plan) => parsePlan(formatPlan(merged)).ok
const [one, over, l] = ['one' as CircuitId, 'over' as CircuitId, 'l' as LineId]
const circuitOf = (of: Plan, id: CircuitId): Circuit => of.circuits.get(id)!

test('a feed that one hand put under the other’s phantom gives that pairs of its own', () => {
  const start = plan('phantom')
  const fed = withCircuit(start, {
    ...circuitOf(start, one),
    supply: { type: 'feed-48', at: 'a' as StationId },
  })
  expect(reads(fed)).toBe(false)
  const { plan: merged, mended } = mendPlan(fed, [start, fed])
  expect(reads(merged)).toBe(true)
  expect(circuitOf(merged, one).supply).not.toBeNull()
  expect(circuitOf(merged, over).over).toBeUndefined()
  expect(merged.lines.get(l)!.pairs).toBe(3)
  expect(mended).toHaveLength(2)
})

test('an earth return and too few pairs under a phantom become pairs', () => {
  const start = plan('phantom')
  const line = start.lines.get(l)!
  const narrow = withLine(start, { ...line, return: 'earth', electrodeOhms: [1, 2], pairs: 1 })
  expect(reads(narrow)).toBe(false)
  const { plan: merged } = mendPlan(narrow, [start, narrow])
  expect(reads(merged)).toBe(true)
  expect(merged.lines.get(l)).toMatchObject({ return: 'pair', pairs: 2 })
})

test('a set that one hand put on the other’s simplex gets an electrode', () => {
  const start = plan('simplex')
  const bare = withCircuit(start, {
    ...circuitOf(start, over),
    electrodeOhms: { a: 50 } as Record<StationId, number>,
  })
  expect(reads(bare)).toBe(false)
  const { plan: merged } = mendPlan(bare, [start, bare])
  expect(reads(merged)).toBe(true)
  expect(circuitOf(merged, over).electrodeOhms).toEqual({ a: 50, b: 100 })
})
