import { expect, test } from 'vitest'
import { planFingerprint } from '../../src/files/plan-fingerprint'
import { setPaperWishes } from '../../src/plan/settings-edits'
import { setTitle } from '../../src/plan/text-edits'
import { bigPlan } from '../bench/big-plan'

const plan = bigPlan({ stations: 9, perCircuit: 3, bends: 1 })

test('a fingerprint is eight letters that can be read out, a consonant and a vowel in turn', () => {
  expect(planFingerprint(plan)).toMatch(/^([bdfghjklmnprstvz][aiou]){2}-([bdfghjklmnprstvz][aiou]){2}$/)
})

test('it is the same for the same plan, whatever is wished of its papers, and another for another plan', () => {
  expect(planFingerprint({ ...plan })).toBe(planFingerprint(plan))
  expect(planFingerprint(setPaperWishes(plan, { revision: 'B', size: 'Letter' }))).toBe(planFingerprint(plan))
  expect(planFingerprint({ ...plan, wireTempC: plan.wireTempC + 1 })).not.toBe(planFingerprint(plan))
})

// Birthday bound: of n values drawn from 2²⁴ about n² / 2²⁵ pairs fall together, 0.12 of 2000.
test('two thousand plans that differ by a letter have two thousand of them, or all but a few', () => {
  const all = Array.from({ length: 2000 }, (_, i) => planFingerprint(setTitle(plan, `Plan ${i}`)))
  expect(new Set(all).size).toBeGreaterThanOrEqual(1998)
})
