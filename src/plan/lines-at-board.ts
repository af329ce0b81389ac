import type { Supply } from '../catalog/supply'
import { stationsOfCircuit } from './circuit-topology'
import type { StationId } from './id'
import { sidesAt } from './pair-ends'
import type { Circuit, Plan } from './plan'

/** Ports that a circuit's lines take of a board or an exchange at a station; an exchange's own telephone takes one as well. */
export const portsNeeded = (plan: Plan, circuit: Circuit, at: StationId, kind: Supply['kind']): number =>
  sidesAt(plan, circuit, at).length + (kind === 'exchange' && circuit.sets.has(at) ? 1 : 0)

/** The station of a circuit at which most of its lines meet: where a board stands best, as it is drawn. */
export function meetingPlace(plan: Plan, circuit: Circuit): StationId | undefined {
  const [first, ...others] = stationsOfCircuit(plan, circuit)
  if (!first) return undefined
  const meet = (at: StationId) => sidesAt(plan, circuit, at).length
  return others.reduce((best, at) => (meet(at) > meet(best) ? at : best), first)
}
