import { conditionsOf } from '../budget/conditions'
import { trunksAt } from '../budget/trunk-ends'
import { judge } from '../budget/verdict'
import type { Catalog } from '../catalog/catalog'
import type { MeasuredLine } from '../measure/measured'
import type { LineId } from '../plan/id'
import type { Circuit, Plan } from '../plan/plan'
import { circuitNetwork } from './circuit-network'
import { type Trunk, trunkOf } from './trunks'

/** Every line from board to board of a plan, reckoned for its own weather. */
export function trunksOfNet(
  plan: Plan,
  catalog: Catalog,
  measured: ReadonlyMap<LineId, MeasuredLine>,
): readonly Trunk[] {
  return [...plan.circuits.values()].flatMap((circuit) => trunksFrom(plan, circuit, catalog, measured))
}

/** Those that a board's own lines lead over. */
export function trunksFrom(
  plan: Plan,
  circuit: Circuit,
  catalog: Catalog,
  measured: ReadonlyMap<LineId, MeasuredLine>,
): readonly Trunk[] {
  const ends = trunksAt(plan, circuit, catalog)?.from ?? []
  if (ends.length === 0) return []
  const today = conditionsOf(plan.weather, plan.wireTempC)
  const near = { id: circuit.id, model: circuitNetwork(plan, circuit, catalog, measured) }
  return ends.flatMap(({ circuit: id }) => {
    const far = { id, model: circuitNetwork(plan, plan.circuits.get(id)!, catalog, measured) }
    return trunkOf(near, far, today) ?? []
  })
}

/** Whether calls go over a trunk at all: both boards are rung over it, and at least one call is heard. */
export const isUsable = ({ joinsExchanges, ringing, calls }: Trunk): boolean =>
  !joinsExchanges &&
  ringing.every((row) => judge('ringing', row) !== 'fails') &&
  calls.some((row) => judge('voice', row) !== 'fails')
