import { readFileSync } from 'node:fs'
import type { Evidence } from '../../src/fault/evidence'
import { parsePlan } from '../../src/files/parse-plan'
import { measurePlan } from '../../src/measure/measure-line'
import { locateInCircuit } from '../../src/report/locate-in-circuit'
import { reportPlan } from '../../src/report/report-plan'
import { type BenchRow, medianMs, medianWithout } from './timing'

/** Tens of thousands of faults are tried: who solved the net anew for each would take as many reports. */
const MOST_REPORTS = 100

/** Where the fault of the demo's first circuit lies, from three readings: every kind at every place with every resistance. */
export async function faultOfDemo(): Promise<BenchRow> {
  const demo = () => {
    const result = parsePlan(readFileSync('public/demo.plan.geojson', 'utf8'))
    if (!result.ok) throw new Error(result.problems.map(({ message }) => message).join(' '))
    return result.value
  }
  const plan = demo()
  const circuit = [...plan.circuits.values()].find(({ lines }) => lines.length > 1)!
  const measured = measurePlan(plan)
  const first = plan.lines.get(circuit.lines[0]!)!
  const meter = { line: first.id, wireM: 0, toward: 'to', meterPct: 1 } as const
  const evidence: readonly Evidence[] = [
    { ...meter, far: 'open', what: 'loopOhms', value: 40 },
    { ...meter, far: 'short', what: 'loopOhms', value: 40 },
    { rings: [first.from, first.to], ok: false },
  ]
  const ms = await medianMs(() => locateInCircuit(plan, circuit, measured, evidence))
  const reportMs = await medianWithout(demo, (fresh) => reportPlan(fresh), 20)
  return {
    what: `Where a fault of ${circuit.name} in the demo lies, from three readings`,
    ms,
    figures: `${(ms / reportMs).toFixed(0)} times as long as a plain report of the plan`,
    goals: [
      { kind: 'time', text: '≤ 500 ms', met: ms <= 500 },
      {
        kind: 'ratio',
        text: `no longer than ${MOST_REPORTS} reports`,
        met: ms <= MOST_REPORTS * reportMs,
      },
    ],
  }
}
