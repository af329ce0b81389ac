import type { Verdict } from '../budget/rows'
import type { CircuitId, LineId } from '../plan/id'
import type { Plan } from '../plan/plan'
import type { Ground } from '../terrain/ground'
import type { ReportCircuit } from './report'
import { reportPlan } from './report-plan'

/** What one shape of a net comes to. */
export interface NetFigures {
  readonly wireM: number
  readonly kg: number
  readonly spools: number
  readonly splices: number
  readonly cautions: number
  readonly verdict: Verdict
  readonly worst: Verdict
  /** The circuit as the report has it. */
  readonly circuit: ReportCircuit
}

/** The figures of a net that is drawn in a plan: of its lines, and of the circuit over them. */
export function netFigures(
  plan: Plan,
  lines: readonly LineId[],
  circuit: CircuitId,
  ground: Ground | undefined,
): NetFigures {
  const report = reportPlan(plan, ground)
  const own = new Set<string>(lines)
  const drawn = report.lines.filter(({ id }) => own.has(id))
  const found = report.circuits.find(({ id }) => id === circuit)
  if (!found) throw new Error(`no circuit ${circuit} in the plan`)
  const pieces = drawn.flatMap((line) => line.pieces)
  const pairs = drawn.reduce((sum, line) => sum + (plan.lines.get(line.id)?.pairs ?? 1), 0)
  return {
    wireM: drawn.reduce((sum, line) => sum + line.wireM, 0),
    kg: drawn.reduce((sum, line) => sum + line.kg, 0),
    spools: new Set(pieces.map(({ spool }) => spool)).size,
    splices: Math.max(0, pieces.length - pairs),
    cautions: report.cautions.filter(({ where }) => own.has(where)).length,
    verdict: found.verdict,
    worst: found.worst.verdict,
    circuit: found,
  }
}
