import type { Catalog } from '../catalog/catalog'
import type { Supply } from '../catalog/supply'
import type { TelephoneSet } from '../catalog/telephone-set'
import type { Wire } from '../catalog/wire'
import type { Plan } from './plan'

/** The entries of the catalog on which a plan's figures rest: the wires of its lines, the sets and supplies of its circuits; each once. */
export function usedEntries(plan: Plan, catalog: Catalog): readonly (Wire | TelephoneSet | Supply)[] {
  const circuits = [...plan.circuits.values()]
  const wires = [...plan.lines.values()].map(({ wire }) => catalog.wires.get(wire))
  const sets = circuits.flatMap((circuit) => [...circuit.sets.values()].map((id) => catalog.sets.get(id)))
  const supplies = circuits.flatMap(({ supply }) => (supply ? [catalog.supplies.get(supply.type)] : []))
  return [...new Set([...wires, ...sets, ...supplies])].filter((entry) => entry !== undefined)
}
