import { readFileSync } from 'node:fs'
import { parsePlan } from '../../src/files/parse-plan'
import { forgetThings } from '../../src/memo'
import { moveBend } from '../../src/plan/leg-edits'
import type { Plan } from '../../src/plan/plan'
import { reportPlan } from '../../src/report/report-plan'
import { bigPlan, SIZES } from './big-plan'
import { type BenchRow, meanOfFirst, medianWithout, sideBySide } from './timing'

const DEMO_GOAL_MS = 4
/** A second's drag. */
const FIRST_MOVES = 60

/** The demo as it is opened: nothing of it is known yet. */
export async function demoReport(): Promise<BenchRow> {
  const opened = demo()
  const firstMs = meanOfFirst(1, () => reportPlan(opened))
  const ms = await medianWithout(
    () => {
      forgetThings()
      return demo()
    },
    (plan) => reportPlan(plan),
  )
  return {
    what: 'The demo plan, whole report',
    ms,
    figures: `${firstMs.toFixed(0)} ms the very first time, before its code is compiled`,
    goals: [{ kind: 'time', text: `< ${DEMO_GOAL_MS} ms`, met: ms < DEMO_GOAL_MS }],
  }
}

/** A hand drags one bend: of each plan only what that touches is reckoned again. */
export const oneBendMoved = (
  [
    // Of five circuits one is another: measured 2.8 to 4.3 times, as the machine has it.
    ['the demo', demo, 2, 2],
    ['a plan of 200 stations', () => bigPlan(SIZES[200]), 2, 10],
    ['a plan of 1,000 stations, 20 bends a line', () => bigPlan(SIZES[1000]), 4, 20],
  ] as const
).map(([name, planOf, goalMs, times]) => async (): Promise<BenchRow> => {
  const anewMs = await medianWithout(planOf, (fresh) => reportPlan(fresh), 7)
  let plan = planOf()
  reportPlan(plan)
  const line = [...plan.lines.values()].filter(({ bends }) => bends.length > 0)
  const { id, bends } = line[Math.floor(line.length / 2)]!
  const [lonDeg, latDeg] = bends[0]!
  let turn = 0
  const bent = () => moveBend(plan, id, 0, [lonDeg + 1e-5 * (++turn % 50), latDeg])
  const first = plan
  const whole = () => {
    plan = bent()
    return reportPlan(plan).circuits.map(({ reach, worst }) => [reach.factor, worst.reach.factor])
  }
  const firstMs = meanOfFirst(FIRST_MOVES, whole)
  // As in a drag: each move is an edit of the plan from before it. Then as when the hand is still: all of it, spools too.
  const [ms, stillMs, wholeMs] = (await sideBySide(
    () => reportPlan(moveBend(first, id, 0, [lonDeg + 1e-5 * (++turn % 50), latDeg]), undefined, first),
    () => {
      plan = bent()
      return reportPlan(plan)
    },
    whole,
  )) as [number, number, number]
  return {
    what: `One bend moved in ${name}, whole report, how far each circuit could go too`,
    ms: wholeMs,
    figures: `${ms.toFixed(2)} ms at each move of a drag; ${stillMs.toFixed(2)} ms until somebody asks how far a circuit could go; ${firstMs.toFixed(2)} ms the first ${FIRST_MOVES} times, while its code is compiled`,
    against: [{ by: 'the whole report anew', ms: anewMs }],
    goals: [
      { kind: 'time', text: `≤ ${goalMs} ms`, met: wholeMs <= goalMs },
      { kind: 'ratio', text: `${times} × faster than anew in a drag`, met: anewMs / ms >= times },
    ],
  }
})

function demo(): Plan {
  const result = parsePlan(readFileSync('public/demo.plan.geojson', 'utf8'))
  if (!result.ok) throw new Error(result.problems.map(({ message }) => message).join(' '))
  return result.value
}
