import { expect, test } from 'vitest'
import { handedOn, kinshipOf } from '../../../src/files/carry/kinship'
import { formatPlan } from '../../../src/files/format-plan'
import { parsePlan } from '../../../src/files/parse-plan'
import { planFingerprint } from '../../../src/files/plan-fingerprint'
import type { Plan } from '../../../src/plan/plan'
import { demoPlan } from '../../sheet/demo-source'

const titled = (plan: Plan, title: string): Plan => ({ ...plan, title })
/** As it comes out of a file at the other end. */
function carried(plan: Plan): Plan {
  const read = parsePlan(formatPlan(handedOn(plan)))
  if (!read.ok) throw new Error('it does not read')
  return read.value
}

test('the same plan, and another', () => {
  const mine = demoPlan()
  expect(kinshipOf(mine, carried(mine), [])).toEqual({ is: 'same' })
  expect(kinshipOf(mine, titled(mine, 'Never handed on'), [])).toEqual({ is: 'another' })
})

test('where a plan was handed on does not show in its fingerprint', () => {
  expect(planFingerprint(handedOn(demoPlan()))).toBe(planFingerprint(demoPlan()))
})

test('theirs went on from mine: newer; mine went on from theirs: older', () => {
  const mine = demoPlan()
  const theirs = carried(titled(carried(mine), 'Gone on'))
  expect(kinshipOf(mine, theirs, [mine])).toEqual({ is: 'newer' })
  expect(kinshipOf(theirs, mine, [])).toEqual({ is: 'older' })
})

test('both went on: the state that both had is found among what was kept', () => {
  const base = demoPlan()
  const theirs = carried(titled(carried(base), 'Theirs'))
  const mine = titled(base, 'Mine')
  expect(kinshipOf(mine, theirs, [base])).toEqual({ is: 'both changed', base })
})

test('no more than the last twenty hand-overs are remembered', () => {
  let plan = demoPlan()
  for (let n = 0; n < 30; n++) plan = handedOn(titled(plan, `State ${n}`))
  expect(plan.unknown?.plan?.handed).toHaveLength(20)
})
