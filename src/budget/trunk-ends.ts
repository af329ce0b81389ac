import type { Catalog } from '../catalog/catalog'
import type { Supply } from '../catalog/supply'
import { remembering } from '../memo'
import { stationsOfCircuit } from '../plan/circuit-topology'
import type { CircuitId, LineId } from '../plan/id'
import { sidesAt } from '../plan/pair-ends'
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

/** Another circuit's board, and the station where it stands. */
export interface FarBoard {
  readonly circuit: CircuitId
  readonly at: string
}

/** The boards to which a board's own lines lead, and those whose lines end on a port of it. */
export interface TrunkEnds {
  readonly from: readonly FarBoard[]
  readonly to: readonly FarBoard[]
}

/** The trunks of a circuit's board; undefined where it has none. */
export function trunksAt(plan: Plan, circuit: Circuit, catalog: Catalog): TrunkEnds | undefined {
  if (!circuit.supply || !isSwitchboard(catalog.supplies.get(circuit.supply.type))) return undefined
  const farBoards = (isOne: (other: Circuit) => boolean) =>
    [...plan.circuits.values()].filter(isOne).map(({ id, supply }) => ({ circuit: id, at: supply!.at }))
  const from = farBoards((other) => leadsTo(plan, circuit, other, catalog))
  const to = farBoards((other) => leadsTo(plan, other, circuit, catalog))
  return from.length + to.length > 0 ? { from, to } : undefined
}

/** The lines that lead from one board to another, of all circuits. */
export const trunkLines = remembering((plan: Plan, catalog: Catalog): ReadonlySet<LineId> => {
  return new Set(
    [...plan.circuits.values()].flatMap((circuit) => {
      const ends = trunksAt(plan, circuit, catalog)?.from ?? []
      if (ends.length === 0) return []
      const reaches = (id: LineId, at: string) => {
        const line = plan.lines.get(id)
        return line?.from === at || line?.to === at
      }
      return sidesAt(plan, circuit, circuit.supply!.at)
        .filter((side) => ends.some(({ at }) => side.some((id) => reaches(id, at))))
        .flat()
    }),
  )
})
