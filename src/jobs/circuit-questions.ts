import { type Choice, reachBySupply, reachByWire } from '../budget/choices'
import { circuitModel } from '../budget/circuit-model'
import { conditionsOf } from '../budget/conditions'
import { longestWay } from '../budget/path'
import { BUILT_IN } from '../catalog/built-in'
import { mergeCatalogs } from '../catalog/catalog'
import type { MeasuredLine } from '../measure/measured'
import type { CircuitId, LineId } from '../plan/id'
import type { Plan } from '../plan/plan'
import { remediesFor } from '../report/remedies'
import type { Remedy } from '../report/report'

/** What takes longer than a frame, and is asked off the main thread. */
export type CircuitQuestion = {
  readonly plan: Plan
  readonly measured: ReadonlyMap<LineId, MeasuredLine>
} & (
  | { readonly ask: 'remedies'; readonly circuits: readonly CircuitId[] }
  | { readonly ask: 'choices'; readonly circuit: CircuitId }
)

/** What would mend a circuit; how long its longest way is; or what one choice of wire or supply would give it. */
export type CircuitAnswer =
  | { readonly kind: 'remedies'; readonly circuit: CircuitId; readonly remedies: readonly Remedy[] }
  | { readonly kind: 'longest-way'; readonly way: { from: string; to: string; wireM: number } | null }
  | { readonly kind: 'choice'; readonly of: 'wire' | 'supply'; readonly choice: Choice }

/** Answers bit by bit, each as soon as it is known. */
export function answerCircuits(question: CircuitQuestion, give: (answer: CircuitAnswer) => void): void {
  const { plan, measured } = question
  if (question.ask === 'remedies') {
    for (const circuit of question.circuits)
      give({ kind: 'remedies', circuit, remedies: remediesFor(plan, circuit, measured) })
    return
  }
  const circuit = plan.circuits.get(question.circuit)
  if (!circuit) return
  const catalog = mergeCatalogs(BUILT_IN, plan.catalog)
  const model = circuitModel(plan, circuit, catalog, measured)
  const conditions = conditionsOf(plan.weather, plan.wireTempC)
  give({ kind: 'longest-way', way: longestWay(model) })
  for (const wire of catalog.wires.values())
    for (const choice of reachByWire(model, conditions, [wire])) give({ kind: 'choice', of: 'wire', choice })
  for (const supply of catalog.supplies.values())
    for (const choice of reachBySupply(model, conditions, [supply]))
      give({ kind: 'choice', of: 'supply', choice })
}
