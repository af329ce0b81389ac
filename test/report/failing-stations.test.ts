import { expect, test } from 'vitest'
import type { CircuitId, StationId } from '../../src/plan/id'
import { EMPTY_PLAN, type Plan } from '../../src/plan/plan'
import { failingStations } from '../../src/report/failing-stations'
import type { Report, ReportCircuit } from '../../src/report/report'

const CIRCUIT = 'c' as CircuitId
const plan: Plan = {
  ...EMPTY_PLAN,
  circuits: new Map([
    [
      CIRCUIT,
      {
        id: CIRCUIT,
        name: 'Net',
        lines: [],
        sets: new Map([
          ['a' as StationId, 'set'],
          ['b' as StationId, 'set'],
        ]),
        supply: null,
      },
    ],
  ]),
}
const reportOf = (circuit: Partial<ReportCircuit>): Pick<Report, 'circuits'> => ({
  circuits: [
    { id: CIRCUIT, loop: [], ringing: [], voice: [], missing: [], ...circuit } as unknown as ReportCircuit,
  ],
})

test('the station whose bell gets too little is marked, not the one that rings it', () => {
  const ringing = [{ from: 'a', to: 'b', volts: 16, minVolts: 18 }]
  expect([...failingStations(plan, reportOf({ verdict: 'fails', ringing }))]).toEqual(['b'])
})

test('where a circuit fails for want of something, all its sets are marked', () => {
  expect([...failingStations(plan, reportOf({ verdict: 'fails' }))]).toEqual(['a', 'b'])
})

test('a circuit that is not finished marks nobody: it has not failed yet', () => {
  const missing = [{ code: 'one-set' as const }]
  expect(failingStations(plan, reportOf({ verdict: 'fails', missing })).size).toBe(0)
})

test('a thin margin marks nobody', () => {
  const ringing = [{ from: 'a', to: 'b', volts: 19, minVolts: 18 }]
  expect(failingStations(plan, reportOf({ verdict: 'thin', ringing })).size).toBe(0)
})
