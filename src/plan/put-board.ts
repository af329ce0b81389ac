import { BUILT_IN } from '../catalog/built-in'
import { smallestBoard } from '../catalog/smallest-board'
import { setSet, setSupply } from './circuit-edits'
import { stationsOfCircuit } from './circuit-topology'
import type { CircuitId, StationId } from './id'
import { portsNeeded } from './lines-at-board'
import type { Plan } from './plan'

/**
 * A circuit with the smallest board that its lines find room on: an exchange where its telephones live on the current of others. Where it has
 * no telephone yet, each of its stations gets one. Undefined where no board is large enough.
 *
 * @param set catalog id of the telephone for a circuit without any
 */
export function putBoard(plan: Plan, id: CircuitId, at: StationId, set: string): Plan | undefined {
  const drawn = plan.circuits.get(id)
  if (!drawn) return undefined
  const equipped =
    drawn.sets.size > 0
      ? plan
      : stationsOfCircuit(plan, drawn).reduce((next, station) => setSet(next, id, station, set), plan)
  const circuit = equipped.circuits.get(id)!
  const sets = [...plan.catalog.sets, ...BUILT_IN.sets]
  const isFed = [...circuit.sets.values()].some(
    (type) => sets.find((each) => each.id === type)?.talk === 'common',
  )
  const kind = isFed ? 'exchange' : 'board'
  const ports = portsNeeded(equipped, circuit, at, kind)
  const board = smallestBoard([...plan.catalog.supplies, ...BUILT_IN.supplies], kind, ports)
  return board && setSupply(equipped, id, { type: board.id, at })
}
