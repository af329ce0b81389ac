import { type CircuitModel, circuitModel } from '../budget/circuit-model'
import type { Catalog } from '../catalog/catalog'
import { planSpools } from '../materials/plan-spools'
import { usedSpools } from '../materials/used-spools'
import type { MeasuredLine } from '../measure/measured'
import type { LineId } from '../plan/id'
import type { Circuit, Plan } from '../plan/plan'
import { spliceCount, splicesOf } from './spliced-lines'

/** The network of one circuit with the wire as it is laid: its splices too, where they count. */
export function circuitNetwork(
  plan: Plan,
  circuit: Circuit,
  catalog: Catalog,
  measured: ReadonlyMap<LineId, MeasuredLine>,
): CircuitModel {
  return circuitModel(plan, circuit, catalog, measured, laidSplices(plan, catalog, measured))
}

/** The same as `splicesOf`, of a plan whose spools nobody has cut yet. */
export function laidSplices(plan: Plan, catalog: Catalog, measured: ReadonlyMap<LineId, MeasuredLine>) {
  if (!spliceCount(plan.allowances)) return undefined
  const planned = planSpools(plan, catalog, measured)
  return splicesOf(plan, (plan.field ? usedSpools(plan, planned, measured) : planned).pieces)
}
