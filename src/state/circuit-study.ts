import type { CircuitModel } from '../budget/circuit-model'
import { type Conditions, conditionsOf } from '../budget/conditions'
import { measurePlan } from '../measure/measure-line'
import type { MeasuredLine } from '../measure/measured'
import type { CircuitId, LineId } from '../plan/id'
import type { Plan } from '../plan/plan'
import { circuitNetwork } from '../report/circuit-network'
import { laidCatalog } from '../report/learned-of'
import type { Store } from './store'

/** A circuit of the settled plan as the engine takes it. */
export interface CircuitStudy {
  readonly plan: Plan
  readonly measured: ReadonlyMap<LineId, MeasuredLine>
  readonly model: CircuitModel
  readonly conditions: Conditions
}

/** What is studied at leisure follows the plan as it has settled, so that it costs a drag nothing. Undefined where the circuit is gone. */
export function studyCircuit(store: Store, id: CircuitId): CircuitStudy | undefined {
  const plan = store.settled.value
  const circuit = plan.circuits.get(id)
  if (!circuit) return undefined
  const measured = measurePlan(plan, store.ground.value)
  return {
    plan,
    measured,
    model: circuitNetwork(plan, circuit, laidCatalog(plan, measured), measured),
    conditions: conditionsOf(plan.weather, plan.wireTempC),
  }
}
