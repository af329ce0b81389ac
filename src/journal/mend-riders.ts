import { stationsOfCircuit } from '../plan/circuit-topology'
import type { StationId } from '../plan/id'
import { type Circuit, DEFAULT_ELECTRODE_OHMS, lineName, type Plan } from '../plan/plan'
import { ridersOf } from '../plan/rider-edits'
import { withCircuit, withLine } from '../plan/with-feature'

/**
 * Mends what two hands' edits together contradict about circuits that ride on others: lines under them are pairs, every set of a simplex
 * has an electrode, and a rider that a supply's direct current would have to pass gets pairs of its own.
 */
export function mendRiders(plan: Plan): { readonly plan: Plan; readonly told: readonly string[] } {
  const told: string[] = []
  let next = plan
  for (const circuit of plan.circuits.values()) {
    const stood = standing(next, circuit)
    if (stood !== circuit) next = withCircuit(next, stood)
    if (!circuit.over) continue
    for (const id of circuit.lines) {
      const line = next.lines.get(id)!
      if (line.return === 'pair') continue
      next = withLine(next, { ...line, return: 'pair' })
      told.push(`${lineName(next, line)} is a pair now, for ${circuit.name} rides on it.`)
    }
  }
  for (const rider of ridersOf(next).flatMap(({ code, riders }) =>
    code === 'dc-through-coil' ? riders : [],
  )) {
    const circuit = next.circuits.get(rider)
    if (!circuit?.over) continue
    const { over: _, ...own } = circuit
    next = withCircuit(next, own)
    told.push(`${circuit.name} has pairs of its own now, for direct current does not pass a coil.`)
  }
  return { plan: next, told }
}

/** The electrodes of a circuit, one at each set of a simplex and none where the circuit does not come. */
function standing(plan: Plan, circuit: Circuit): Circuit {
  const { electrodeOhms: given = {}, over } = circuit
  const stations = new Set<string>(stationsOfCircuit(plan, circuit))
  const wanting = over === 'simplex' ? [...circuit.sets.keys()].filter((at) => given[at] === undefined) : []
  const stale = Object.keys(given).some((at) => !stations.has(at))
  if (wanting.length === 0 && !stale) return circuit
  const kept = Object.entries(given).filter(([at]) => stations.has(at)) as [StationId, number][]
  const added = wanting.map((at) => [at, DEFAULT_ELECTRODE_OHMS] as const)
  return { ...circuit, electrodeOhms: Object.fromEntries([...kept, ...added]) }
}
