import { readFileSync } from 'node:fs'
import { parsePlan } from '../../src/files/parse-plan'
import type { CircuitId, LineId, StationId } from '../../src/plan/id'
import { moveBend } from '../../src/plan/leg-edits'
import { type Circuit, EMPTY_PLAN, type Line, type Plan, type Station } from '../../src/plan/plan'
import { reportPlan } from '../../src/report/report-plan'
import { type BenchRow, median, medianMs } from './timing'

const GOAL_MS = 4
const STATIONS = 200
const STATIONS_PER_CIRCUIT = 8

/** The demo as it is opened: nothing of it is known yet. */
export async function demoReport(): Promise<BenchRow> {
  const text = readFileSync('public/demo.plan.geojson', 'utf8')
  const ms = await medianWithout(
    () => parsed(text),
    (plan) => reportPlan(plan),
  )
  return { what: 'The demo plan, whole report', ms, goal: { text: `< ${GOAL_MS} ms`, met: ms < GOAL_MS } }
}

/** A hand drags one bend of a plan of 200 stations. */
export async function oneBendMoved(): Promise<BenchRow> {
  let plan = bigPlan()
  reportPlan(plan)
  const line = [...plan.lines.keys()][Math.floor(plan.lines.size / 2)]!
  let turn = 0
  const ms = await medianMs(() => {
    turn++
    plan = moveBend(plan, line, 0, [67 + 1e-5 * (turn % 50), 48.6])
    return reportPlan(plan)
  })
  return {
    what: `One bend moved in a plan of ${STATIONS} stations, whole report`,
    ms,
    goal: { text: `≤ ${GOAL_MS} ms`, met: ms <= GOAL_MS },
  }
}

function parsed(text: string): Plan {
  const result = parsePlan(text)
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

/** Party lines of eight crank sets, two bends to a line, side by side. */
function bigPlan(): Plan {
  const stations = new Map<StationId, Station>()
  const lines = new Map<LineId, Line>()
  for (let k = 0; k < STATIONS; k++) {
    const [row, place] = [Math.floor(k / STATIONS_PER_CIRCUIT), k % STATIONS_PER_CIRCUIT]
    const id = `s${k}` as StationId
    stations.set(id, { id, name: `Post ${k}`, note: '', position: [67 + place * 0.012, 48.5 + row * 0.01] })
    if (place === 0) continue
    const before = stations.get(`s${k - 1}` as StationId)!
    const [lon, lat] = before.position
    const line = `l${k}` as LineId
    lines.set(line, {
      id: line,
      from: before.id,
      to: id,
      bends: [
        [lon + 0.004, lat + 0.001],
        [lon + 0.008, lat - 0.001],
      ],
      legs: [{ lay: 'surface' }, { lay: 'overhead' }, { lay: 'surface' }],
      wire: 'wd-1a',
      pairs: 1,
      return: 'pair',
    })
  }
  const circuits = new Map<CircuitId, Circuit>()
  for (let row = 0; row < STATIONS / STATIONS_PER_CIRCUIT; row++) {
    const own = Array.from({ length: STATIONS_PER_CIRCUIT }, (_, place) => row * STATIONS_PER_CIRCUIT + place)
    const id = `c${row}` as CircuitId
    circuits.set(id, {
      id,
      name: `Net ${row}`,
      lines: own.slice(1).map((k) => `l${k}` as LineId),
      sets: new Map(own.map((k) => [`s${k}` as StationId, 'crank-1600'])),
      supply: null,
    })
  }
  return { ...EMPTY_PLAN, stations, lines, circuits }
}
