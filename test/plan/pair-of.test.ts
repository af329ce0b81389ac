import { expect, test } from 'vitest'
import type { CircuitId, LineId } from '../../src/plan/id'
import { pairsOf } from '../../src/plan/pair-of'
import type { Circuit, Plan } from '../../src/plan/plan'

const line = { id: 'l' as LineId, pairs: 4 }
const circuitsOf = (...given: readonly (readonly [string, Circuit['over']?])[]): Pick<Plan, 'circuits'> => ({
  circuits: new Map(
    given.map(([id, over]) => [
      id as CircuitId,
      {
        id: id as CircuitId,
        name: id,
        lines: [line.id],
        sets: new Map(),
        supply: null,
        ...(over && { over }),
      },
    ]),
  ),
})
const on = (plan: Pick<Plan, 'circuits'>, id: string) => pairsOf(plan, { id: id as CircuitId }, line)

test('a rider takes no pair from those that are named after it, and lies over the pairs of those it rides on', () => {
  const plan = circuitsOf(['ph', 'phantom'], ['a'], ['b'])
  expect(['a', 'b', 'ph'].map((id) => on(plan, id))).toEqual([[1], [2], [1, 2]])
})

test('two riders share no pair: the second goes over what is left, and over spare pairs', () => {
  const plan = circuitsOf(['a'], ['b'], ['c'], ['sx', 'simplex'], ['ph', 'phantom'])
  expect(on(plan, 'sx')).toEqual([1])
  expect(on(plan, 'ph')).toEqual([2, 3])
  expect(on(circuitsOf(['a'], ['ph', 'phantom']), 'ph')).toEqual([1, 2])
})

test('a circuit that is not on the line has no pair of it', () => {
  expect(on(circuitsOf(['a']), 'z')).toEqual([])
})
