import { expect, test } from 'vitest'
import { BUILT_IN } from '../../src/catalog/built-in'
import { isKept, NO_ENTRIES, offeredTo, takeKept, withKept, withoutKept } from '../../src/plan/kept-entries'
import type { Plan } from '../../src/plan/plan'
import { SMALL_PLAN } from '../panel/small-plan'

const wire = BUILT_IN.wires.find(({ id }) => id === 'wd-1a')!
const ours = { ...wire, id: 'wd-1a-2', name: 'Our reel', loopOhmPerKm: 150 }
const withOwn = (own: typeof wire): Plan => ({ ...SMALL_PLAN, catalog: { ...NO_ENTRIES, wires: [own] } })

test('what is kept is offered to a plan that lacks it, and taken into it when it is chosen', () => {
  const kept = withKept(NO_ENTRIES, 'wires', ours)
  expect(isKept(kept, 'wires', ours)).toBe(true)
  expect(offeredTo(SMALL_PLAN, kept, 'wires')).toEqual([ours])
  const taken = takeKept(SMALL_PLAN, kept, 'wires', ours.id)
  expect(taken.catalog.wires).toEqual([ours])
  expect(offeredTo(taken, kept, 'wires')).toEqual([])
  expect(takeKept(taken, kept, 'wires', ours.id)).toBe(taken)
  expect(takeKept(SMALL_PLAN, kept, 'wires', 'wd-1a')).toBe(SMALL_PLAN)
})

test('a plan whose own entry bears its id for another thing is offered it under another', () => {
  const kept = withKept(NO_ENTRIES, 'wires', ours)
  const plan = withOwn({ ...ours, name: 'Another reel', loopOhmPerKm: 99 })
  expect(offeredTo(plan, kept, 'wires').map(({ id, name }) => [id, name])).toEqual([
    ['wd-1a-2-2', 'Our reel'],
  ])
  const taken = takeKept(plan, kept, 'wires', 'wd-1a-2-2')
  expect(taken.catalog.wires.map(({ name }) => name)).toEqual(['Another reel', 'Our reel'])
})

test('kept anew under its name it is changed, never a second one; it hides no built-in one', () => {
  const twice = withKept(withKept(NO_ENTRIES, 'wires', ours), 'wires', { ...ours, loopOhmPerKm: 160 })
  expect(twice.wires.map(({ loopOhmPerKm }) => loopOhmPerKm)).toEqual([160])
  const hidden = withKept(twice, 'wires', { ...wire, name: 'As measured' })
  expect(hidden.wires.map(({ id }) => id)).toEqual(['wd-1a-2', 'wd-1a-3'])
  expect(withoutKept(hidden, 'wires', 'wd-1a-2').wires.map(({ name }) => name)).toEqual(['As measured'])
})
