import type { Catalog } from '../catalog/catalog'
import type { Supply } from '../catalog/supply'
import { stationsOfCircuit } from '../plan/circuit-topology'
import type { Circuit, Plan } from '../plan/plan'

/** Whether calls are joined from port to port at it, by hand or by itself. */
export const isSwitchboard = (supply: Pick<Supply, 'kind'> | undefined): boolean =>
  supply?.kind === 'board' || supply?.kind === 'exchange'

/**
 * Whether a line of one board's circuit leads to another circuit's board, as a trunk: it reaches its station, and no telephone of the
 * first circuit stands there.
 */
export function leadsTo(plan: Plan, circuit: Circuit, other: Circuit, catalog: Catalog): boolean {
  const boardOf = ({ supply }: Circuit) =>
    isSwitchboard(supply ? catalog.supplies.get(supply.type) : undefined)
  if (circuit.id === other.id || !circuit.supply || !other.supply) return false
  const { at } = other.supply
  if (at === circuit.supply.at || circuit.sets.has(at) || !boardOf(circuit) || !boardOf(other)) return false
  return stationsOfCircuit(plan, circuit).includes(at)
}

/** How many other boards a board's own lines lead to, and how many others' lines end on ports of it. */
export interface TrunkCount {
  readonly from: number
  readonly to: number
}

/** The trunks of a circuit's board; undefined where it has none. */
export function trunksAt(plan: Plan, circuit: Circuit, catalog: Catalog): TrunkCount | undefined {
  if (!circuit.supply || !isSwitchboard(catalog.supplies.get(circuit.supply.type))) return undefined
  const others = [...plan.circuits.values()]
  const from = others.filter((other) => leadsTo(plan, circuit, other, catalog)).length
  const to = others.filter((other) => leadsTo(plan, other, circuit, catalog)).length
  return from + to > 0 ? { from, to } : undefined
}
