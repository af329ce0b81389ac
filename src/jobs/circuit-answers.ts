import { type Choice, reachBySupply, reachByWire } from '../budget/choices'
import { conditionsOf } from '../budget/conditions'
import { worstCorner } from '../budget/envelope'
import { longestWay } from '../budget/path'
import { type WorstBecause, worstBecause } from '../budget/worst-parts'
import type { Evidence } from '../fault/evidence'
import type { FaultFound } from '../fault/locate'
import type { MeasuredLine } from '../measure/measured'
import type { CircuitId, LineId } from '../plan/id'
import type { Plan } from '../plan/plan'
import { bad, type Result } from '../problem'
import { type Beside, besideReport } from '../report/beside-report'
import { circuitNetwork } from '../report/circuit-network'
import { faintRemedies } from '../report/faint-remedies'
import { laidCatalog } from '../report/learned-of'
import { locateInCircuit } from '../report/locate-in-circuit'
import { remediesFor } from '../report/remedies'
import type { Remedy, ReportCircuit } from '../report/report'
import type { Tell } from './protocol'

interface MeasuredPlan {
  readonly plan: Plan
  readonly measured: ReadonlyMap<LineId, MeasuredLine>
}

/** Why one circuit stands badly in the worst weather; then what would mend it. */
export type Mending =
  | { readonly circuit: CircuitId; readonly because: WorstBecause | null }
  | { readonly circuit: CircuitId; readonly remedies: readonly Remedy[] }
  | { readonly circuit: CircuitId; readonly forFaint: readonly Remedy[] }

/** Circuits to mend, those that are only thin in the worst weather, and those with faint calls through a board. */
interface Amiss {
  readonly circuits: readonly CircuitId[]
  readonly thin: readonly CircuitId[]
  readonly faint: readonly CircuitId[]
}

/** How long a circuit's longest way is; or what one choice of wire or supply would give it. */
export type ChoicePart =
  | { readonly kind: 'longest-way'; readonly way: { from: string; to: string; wireM: number } | null }
  | { readonly kind: 'choice'; readonly of: 'wire' | 'supply'; readonly choice: Choice }

/** Circuits drawn for the odds of one: enough for an interval of ± 2 in a hundred. */
const SAMPLES = { samples: 2000, seed: 1 }

/** What is asked of circuits and takes longer than a frame; answered in parts, each as soon as it is known. */
export const CIRCUIT_JOBS = {
  remedies: ({ plan, measured, circuits, thin, faint }: MeasuredPlan & Amiss, tell: Tell<Mending>): void => {
    const catalog = laidCatalog(plan, measured)
    const today = conditionsOf(plan.weather, plan.wireTempC)
    for (const circuit of [...circuits, ...thin]) {
      const drawn = plan.circuits.get(circuit)
      if (!drawn) continue
      const model = circuitNetwork(plan, drawn, catalog, measured)
      const { conditions } = worstCorner(model, today, [])
      tell.part({ circuit, because: worstBecause(model, today, conditions) })
    }
    for (const circuit of faint) tell.part({ circuit, forFaint: faintRemedies(plan, circuit, measured) })
    for (const circuit of circuits) tell.part({ circuit, remedies: remediesFor(plan, circuit, measured) })
  },
  choices: (
    { plan, measured, circuit: id }: MeasuredPlan & { readonly circuit: CircuitId },
    tell: Tell<ChoicePart>,
  ): void => {
    const circuit = plan.circuits.get(id)
    if (!circuit) return
    const catalog = laidCatalog(plan, measured)
    const model = circuitNetwork(plan, circuit, catalog, measured)
    const conditions = conditionsOf(plan.weather, plan.wireTempC)
    tell.part({ kind: 'longest-way', way: longestWay(model) })
    for (const wire of catalog.wires.values())
      for (const choice of reachByWire(model, conditions, [wire]))
        tell.part({ kind: 'choice', of: 'wire', choice })
    for (const supply of catalog.supplies.values())
      for (const choice of reachBySupply(model, conditions, [supply]))
        tell.part({ kind: 'choice', of: 'supply', choice })
  },
  locate: ({
    plan,
    measured,
    circuit: id,
    evidence,
  }: MeasuredPlan & {
    readonly circuit: CircuitId
    readonly evidence: readonly Evidence[]
  }): Result<FaultFound> => {
    const circuit = plan.circuits.get(id)
    if (!circuit) return bad({ code: 'no-circuit', at: '', message: 'The circuit is gone.' })
    return locateInCircuit(plan, circuit, measured, evidence)
  },
  prospect: ({ plan, measured, found }: MeasuredPlan & { readonly found: ReportCircuit }): Beside | null =>
    besideReport(plan, found, measured, SAMPLES),
}
