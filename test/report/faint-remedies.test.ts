import { describe, expect, test } from 'vitest'
import { measurePlan } from '../../src/measure/measure-line'
import type { CircuitId } from '../../src/plan/id'
import { faintRemedies } from '../../src/report/faint-remedies'
import { applyChanges } from '../../src/report/remedy-changes'
import { reportPlan } from '../../src/report/report-plan'
import { remedyWords } from '../../src/words/remedy-words'
import { tongueOf } from '../../src/words/tongue'
import { starPlan } from '../plan/star-plan'

const STAR = 'star' as CircuitId
const boardOf = (plan: ReturnType<typeof starPlan>) => reportPlan(plan).circuits[0]!

describe('two of six telephones so far that only calls with them are faint', () => {
  const plan = starPlan({ km: [1, 2, 3, 4, 14, 13], operator: true })
  const found = boardOf(plan)
  const remedies = faintRemedies(plan, STAR, measurePlan(plan))

  test('are named, the worst call first', () => {
    const { faint } = found.switchboard!
    expect(faint.length).toBeGreaterThan(0)
    expect([faint[0]!.from, faint[0]!.to].sort()).toEqual(['t5', 't6'])
    for (const { from, to } of faint) expect(['t5', 't6']).toContain([from, to].find((id) => id > 't4'))
  })

  test('get remedies that the engine confirms: no call is faint after them, and none of its verdicts is worse', () => {
    expect(remedies.length).toBeGreaterThan(0)
    for (const { changes, verdict } of remedies) {
      const after = boardOf(applyChanges(plan, STAR, changes))
      expect(after.switchboard!.faint).toEqual([])
      expect(after.verdict).toBe(verdict)
    }
  })

  test('are mended at their own lines alone, and the lightest comes first of those that hold at worst', () => {
    const wires = remedies.filter(({ changes }) => changes.every(({ kind }) => kind === 'wire'))
    expect(wires.length).toBeGreaterThan(0)
    for (const { changes } of wires)
      for (const change of changes) expect(change.kind === 'wire' && change.line).toMatch(/^l-t[56]$/)
  })

  test('are told once for lines that are changed alike', () => {
    const several = remedies.find(({ changes }) => changes.length > 1)
    const say = tongueOf(plan, 'metric')
    if (several)
      expect(remedyWords(several.changes, plan, plan.circuits.get(STAR)!, say)).toMatch(
        /Post 5.* and .*Post 6/,
      )
  })
})

test('where no call is faint nothing is sought', () => {
  const plan = starPlan({ km: [1, 2, 3] })
  expect(faintRemedies(plan, STAR, measurePlan(plan))).toEqual([])
})
