import { BUILT_IN } from '../catalog/built-in'
import { mergeCatalogs } from '../catalog/catalog'
import type { Wire } from '../catalog/wire'
import { circuitsOfLine, stationsOfCircuit } from '../plan/circuit-topology'
import type { CircuitId } from '../plan/id'
import type { Plan } from '../plan/plan'
import type { Change } from './remedy-changes'

/** How many more cells a battery is tried with. */
const MORE_CELLS = [1, 2, 3, 4]
/** How many rods are tried in place of one. */
const RODS = [2, 4]

/** Every single change that a crew could make to a circuit, sound or not: the engine tells which of them helps. */
export function possibleChanges(plan: Plan, id: CircuitId): Change[] {
  const circuit = plan.circuits.get(id)!
  const catalog = mergeCatalogs(BUILT_IN, plan.catalog)
  const stations = stationsOfCircuit(plan, circuit)
  const changes: Change[] = []

  for (const lineId of circuit.lines) {
    const line = plan.lines.get(lineId)!
    const wire = catalog.wires.get(line.wire)!
    for (const other of catalog.wires.values()) {
      if (other.id !== wire.id && mayDoBetter(other, wire))
        changes.push({ kind: 'wire', line: lineId, wire: other.id })
    }
    changes.push({ kind: 'second-pair', line: lineId })
    if (line.return === 'earth') {
      changes.push({ kind: 'pair-for-earth', line: lineId })
      for (const rods of RODS) changes.push({ kind: 'more-rods', line: lineId, rods })
    }
  }

  const supply = circuit.supply && catalog.supplies.get(circuit.supply.type)
  if (supply && circuit.supply) {
    for (const at of stations) if (at !== circuit.supply.at) changes.push({ kind: 'move-supply', at })
    if (supply.ampHours !== undefined)
      for (const cells of MORE_CELLS) changes.push({ kind: 'more-cells', cells })
  }
  for (const other of catalog.supplies.values()) {
    if (other.id === supply?.id) continue
    // Where there is none yet, a supply may stand at any station.
    const places = circuit.supply ? [circuit.supply.at] : stations
    for (const at of places) changes.push({ kind: 'supply', type: other.id, at })
  }

  for (const from of new Set(circuit.sets.values())) {
    for (const other of catalog.sets.values())
      if (other.id !== from) changes.push({ kind: 'sets', from, to: other.id })
  }
  // A line that several circuits share would be split for all of them.
  const shared = circuit.lines.some((line) => circuitsOfLine(plan, line).length > 1)
  if (!shared) for (const at of stations) changes.push({ kind: 'split', at })
  return changes
}

/** A wire that is no better in ohms, farads or leakage can mend nothing. */
const mayDoBetter = (other: Wire, wire: Wire): boolean =>
  other.loopOhmPerKm < wire.loopOhmPerKm ||
  other.nanoFPerKm < wire.nanoFPerKm ||
  other.wetMicroSPerKm < wire.wetMicroSPerKm
