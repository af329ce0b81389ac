import { type CircuitModel, circuitModel } from '../budget/circuit-model'
import type { Catalog } from '../catalog/catalog'
import { planSpools } from '../materials/plan-spools'
import type { Piece } from '../materials/spool-plan'
import { usedSpools } from '../materials/used-spools'
import type { MeasuredLine } from '../measure/measured'
import type { LineId } from '../plan/id'
import type { Circuit, Plan } from '../plan/plan'

/** Whether splices count in the electricity of a plan. */
const spliceCount = ({ spliceOhms, spliceMicroS }: Plan['allowances']): boolean =>
  Boolean(spliceOhms || spliceMicroS)

/**
 * Splices in one pair of each line, as its pieces have them: of several pairs the one with most. Undefined where the plan gives
 * them neither ohms nor a leakage.
 */
export function splicesOf(
  plan: Plan,
  pieces: ReadonlyMap<LineId, readonly Piece[]>,
): ReadonlyMap<LineId, number> | undefined {
  if (!spliceCount(plan.allowances)) return undefined
  const most = (own: readonly Piece[]) => {
    const ofPair = new Map<number, number>()
    for (const { pair } of own) ofPair.set(pair, (ofPair.get(pair) ?? -1) + 1)
    return Math.max(0, ...ofPair.values())
  }
  return new Map([...pieces].map(([line, own]) => [line, most(own)]))
}

/** The network of one circuit with the wire as it is laid: its splices too, where they count. */
export function circuitNetwork(
  plan: Plan,
  circuit: Circuit,
  catalog: Catalog,
  measured: ReadonlyMap<LineId, MeasuredLine>,
): CircuitModel {
  return circuitModel(plan, circuit, catalog, measured, laidSplices(plan, catalog, measured))
}

/** The same as {@link splicesOf}, of a plan whose spools nobody has cut yet. */
export function laidSplices(plan: Plan, catalog: Catalog, measured: ReadonlyMap<LineId, MeasuredLine>) {
  if (!spliceCount(plan.allowances)) return undefined
  const planned = planSpools(plan, catalog, measured)
  return splicesOf(plan, (plan.field ? usedSpools(plan, planned, measured) : planned).pieces)
}
