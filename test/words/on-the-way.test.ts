import { describe, expect, test } from 'vitest'
import { reportPlan } from '../../src/report/report-plan'
import { cautionText } from '../../src/words/caution-words'
import { onTheWay } from '../../src/words/on-the-way'
import { tongueOf } from '../../src/words/tongue'
import { demoPlan } from '../sheet/demo-source'

const plan = demoPlan()
const say = tongueOf(plan, 'metric')
const { cautions, lines } = reportPlan(plan)
const stepsOf = (name: string) => {
  const line = lines.find((each) => each.name === name)!
  return onTheWay(line, cautions, say)
}

describe('what a crew meets on its way', () => {
  // US Army subcourse SS0444, p. 2-4: under the rails, close by a sleeper, staked on both sides, without slack.
  test('is told with what to do there, though nothing is amiss', () => {
    const steps = stepsOf('Camp – Old kiln')
    expect(steps).toHaveLength(1)
    expect(steps[0]).toMatch(/^Mineral railway, \d+ m out: .*under the rails close by a sleeper/)
  })

  test('is told once, in the words of the caution, where something is amiss', () => {
    const steps = stepsOf('Camp – Ford')
    expect(steps.filter((step) => step.includes('County road'))).toHaveLength(1)
    expect(cautions.map((caution) => cautionText(caution, say))).toContain(
      steps.find((step) => step.includes('County road')),
    )
  })
})
