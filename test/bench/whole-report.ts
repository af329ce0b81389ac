import { readFileSync } from 'node:fs'
import { parsePlan } from '../../src/files/parse-plan'
import { moveBend } from '../../src/plan/leg-edits'
import type { Plan } from '../../src/plan/plan'
import { reportPlan } from '../../src/report/report-plan'
import { bigPlan, SIZES } from './big-plan'
import { type BenchRow, median, medianMs } from './timing'

const DEMO_GOAL_MS = 4

/** The demo as it is opened: nothing of it is known yet. */
export async function demoReport(): Promise<BenchRow> {
  const ms = await medianWithout(demo, (plan) => reportPlan(plan))
  return {
    what: 'The demo plan, whole report',
    ms,
    goal: { text: `< ${DEMO_GOAL_MS} ms`, met: ms < DEMO_GOAL_MS },
  }
}

/** A hand drags one bend: of each plan only what that touches is reckoned again. */
export const oneBendMoved = (
  [
    ['the demo', demo, 2],
    ['a plan of 200 stations', () => bigPlan(SIZES[200]), 2],
    ['a plan of 1,000 stations, 20 bends a line', () => bigPlan(SIZES[1000]), 4],
  ] as const
).map(([name, planOf, goalMs]) => async (): Promise<BenchRow> => {
  let plan = planOf()
  const anew = performance.now()
  reportPlan(plan)
  const anewMs = performance.now() - anew
  const line = [...plan.lines.values()].filter(({ bends }) => bends.length > 0)
  const { id, bends } = line[Math.floor(line.length / 2)]!
  const [lonDeg, latDeg] = bends[0]!
  let turn = 0
  const ms = await medianMs(() => {
    turn++
    plan = moveBend(plan, id, 0, [lonDeg + 1e-5 * (turn % 50), latDeg])
    return reportPlan(plan)
  })
  return {
    what: `One bend moved in ${name}, whole report`,
    ms,
    against: [{ by: 'the whole report anew', ms: anewMs }],
    goal: { text: `≤ ${goalMs} ms`, met: ms <= goalMs },
  }
})

function demo(): Plan {
  const result = parsePlan(readFileSync('public/demo.plan.geojson', 'utf8'))
  if (!result.ok) throw new Error(result.problems.map(({ message }) => message).join(' '))
  return result.value
}

/** Median time of the second step alone, ms. */
async function medianWithout<T>(prepare: () => T, run: (prepared: T) => unknown): Promise<number> {
  const times: number[] = []
  for (let k = 0; k < 60; k++) {
    const prepared = prepare()
    const start = performance.now()
    run(prepared)
    times.push(performance.now() - start)
  }
  return median(times)
}
