import fc from 'fast-check'
import { expect, test } from 'vitest'
import { formatPlan } from '../../src/files/format-plan'
import { EMPTY_PLAN, type Plan } from '../../src/plan/plan'
import { cases } from '../cases'
import { type Step, step, steps, takeStep } from '../plan/random-edits'
import { planOf, quarryNet } from './quarry-net'

const after = (start: Plan, hand: readonly Step[]) =>
  hand.reduce((plan, step, index) => takeStep(plan, step, `new-${index}`), start)

test.each([
  ['an empty plan', () => EMPTY_PLAN],
  ['a plan from a file', quarryNet],
])('whatever a hand does to %s, its file is read back as the same plan', (_, start) => {
  fc.assert(
    fc.property(steps(40, 90), (hand) => {
      const plan = after(start(), hand)
      const text = formatPlan(plan)
      const again = planOf(text)
      expect(again).toEqual(plan)
      expect(formatPlan(again)).toBe(text)
    }),
    { numRuns: cases(50) },
  )
})

test('the random hand draws nets worth the name', () => {
  const plans = fc.sample(steps(40, 90), { numRuns: 200, seed: 7 }).map((hand) => after(EMPTY_PLAN, hand))
  const most = (count: (plan: Plan) => number) => Math.max(...plans.map(count))
  expect(most((plan) => plan.lines.size)).toBeGreaterThan(8)
  expect(most((plan) => plan.circuits.size)).toBeGreaterThan(3)
  expect(
    most((plan) => Math.max(0, ...[...plan.circuits.values()].map((each) => each.sets.size))),
  ).toBeGreaterThan(0)
})

test('an edit that changes nothing gives back the very plan', () => {
  fc.assert(
    fc.property(steps(40, 90), step, (hand, last) => {
      const plan = after(EMPTY_PLAN, hand)
      const next = takeStep(plan, last, 'last')
      if (next !== plan) expect(formatPlan(next)).not.toBe(formatPlan(plan))
    }),
    { numRuns: cases(50) },
  )
})

test('an edit leaves every other station, line and hazard the object that it was', () => {
  fc.assert(
    fc.property(steps(40, 90), step, (hand, last) => {
      const plan = after(EMPTY_PLAN, hand)
      const next = takeStep(plan, last, 'last')
      for (const name of ['stations', 'lines', 'hazards', 'circuits'] as const) {
        for (const [id, thing] of next[name] as ReadonlyMap<string, unknown>) {
          const before = (plan[name] as ReadonlyMap<string, unknown>).get(id)
          if (before !== thing) expect(thing).not.toEqual(before)
        }
      }
    }),
    { numRuns: cases(50) },
  )
})
