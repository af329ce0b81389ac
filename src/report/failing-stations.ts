import { CHECK_KINDS, tradeOf } from '../budget/checks'
import { isUnfinished } from '../budget/circuit-notes'
import { judge } from '../budget/verdict'
import type { StationId } from '../plan/id'
import type { Plan } from '../plan/plan'
import type { Report, ReportCircuit } from './report'

/** Stations at which a check of a failing circuit fails; where none of its figures shows it, every set of the circuit. */
export function failingStations(plan: Plan, report: Pick<Report, 'circuits'>): ReadonlySet<StationId> {
  const failing = new Set<StationId>()
  for (const circuit of report.circuits) {
    if (circuit.verdict !== 'fails' || isUnfinished(circuit.missing)) continue
    const found = failingRows(circuit)
    const sets = plan.circuits.get(circuit.id)?.sets.keys() ?? []
    for (const station of found.length ? found : sets) failing.add(station as StationId)
  }
  return failing
}

const failingRows = (circuit: ReportCircuit): readonly string[] =>
  CHECK_KINDS.flatMap((kind) => {
    const { named, where } = tradeOf(kind)
    return circuit[kind]
      .filter((row) => judge(kind, row) === 'fails')
      .map((row) => where(named(row) as never))
  })
