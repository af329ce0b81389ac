import { expect, test } from 'vitest'
import type { StationId } from '../../src/plan/id'
import type { Plan } from '../../src/plan/plan'
import { moveStation } from '../../src/plan/station-edits'
import { reportPlan } from '../../src/report/report-plan'
import { tongueOf } from '../../src/words/tongue'
import { verdictNews } from '../../src/words/verdict-news'
import { bigPlan } from '../bench/big-plan'

const plan = bigPlan({ stations: 6, perCircuit: 3, bends: 0 })
const reckoned = (of: Plan) => ({ plan: of, circuits: reportPlan(of).circuits })
const far = moveStation(plan, 's2' as StationId, [15, 47.4])
const edits = [
  { who: 'Ben', key: 'stations/s4/name' },
  { who: 'Ada', key: 'stations/s2/position' },
]

test('a circuit that no longer stands as it stood is told, with whose edit of what it follows from', () => {
  const [said, ...others] = verdictNews(reckoned(plan), reckoned(far), edits, tongueOf(far, 'metric'))
  expect(others).toEqual([])
  expect(said).toMatch(
    /Net 0.* no longer works: .* decides\. Before that .*Ada.* changed the place of .*Post 2/,
  )
  expect(said).not.toContain('Ben')
})

test('and so is one that works again; what stays as it was is not told', () => {
  expect(verdictNews(reckoned(far), reckoned(plan), edits, tongueOf(plan, 'metric'))[0]).toMatch(
    /Net 0.* works now/,
  )
  expect(verdictNews(reckoned(plan), reckoned(plan), edits, tongueOf(plan, 'metric'))).toEqual([])
})

test('what changes at worst alone is told as that', () => {
  const before = reckoned(plan)
  const worse = {
    ...before,
    circuits: before.circuits.map((each) => ({
      ...each,
      worst: { ...each.worst, verdict: 'fails' as const },
    })),
  }
  const good = {
    ...before,
    circuits: before.circuits.map((each) => ({
      ...each,
      worst: { ...each.worst, verdict: 'works' as const },
    })),
  }
  const wire = [{ who: 'Ada', key: 'lines/l1/wire' }]
  expect(verdictNews(good, worse, wire, tongueOf(plan, 'metric'))[0]).toMatch(
    /no longer works at worst \(.*\. Before that .*Ada.* changed the wire of/,
  )
  expect(verdictNews(worse, good, wire, tongueOf(plan, 'metric'))[0]).toMatch(/works at worst now/)
})
