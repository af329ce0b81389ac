import { BUILT_IN } from '../catalog/built-in'
import { bad, ok, type Result } from '../problem'
import { connectedPieces, sparePairs, stationsOfCircuit } from './circuit-topology'
import type { CircuitId, LineId, StationId } from './id'
import { withLinesOut } from './line-removal'
import {
  type Circuit,
  circuitName,
  DEFAULT_ELECTRODE_OHMS,
  lineName,
  type Over,
  type Plan,
  plainLineName,
} from './plan'
import { withSoundRiders } from './rider-edits'
import { assertNewCircuit, withCircuit, without } from './with-feature'

export function renameCircuit(plan: Plan, id: CircuitId, name: string): Plan {
  const circuit = plan.circuits.get(id)
  return circuit && circuit.name !== name ? withCircuit(plan, { ...circuit, name }) : plan
}

/**
 * Starts a circuit over a spare pair of each of these lines, or riding on pairs that others have. Refused where a line has too few, or where
 * they don't meet.
 */
export function addCircuit(
  plan: Plan,
  { id, name, lines, over }: { id: CircuitId; name?: string; lines: readonly LineId[]; over?: Over },
): Result<Plan> {
  assertNewCircuit(plan, id)
  const chosen = [...new Set(lines)].filter((line) => plan.lines.has(line))
  const first = plan.lines.get(chosen[0]!)
  if (!first) return bad({ code: 'no-lines', at: id, message: 'A circuit needs a line: pick one or more.' })
  const full = over ? [] : chosen.flatMap((line) => pairFault(plan, line))
  if (full.length > 0) return bad(...full)
  if (connectedPieces(chosen, (line) => plan.lines.get(line)).length > 1) {
    const message = 'These lines do not meet: pick lines that lead from one to the next.'
    return bad({ code: 'unconnected', at: id, message })
  }
  const circuit: Circuit = {
    id,
    name: name ?? plainLineName(plan, first),
    lines: chosen,
    sets: new Map(),
    supply: null,
    ...(over && { over }),
  }
  return withSoundRiders(plan, withCircuit(plan, circuit))
}

/** Refused where every pair of the line is in use, or where the line doesn't touch the circuit. */
export function takeLineIn(plan: Plan, id: CircuitId, lineId: LineId): Result<Plan> {
  const circuit = plan.circuits.get(id)
  const line = plan.lines.get(lineId)
  if (!circuit || !line || circuit.lines.includes(lineId)) return ok(plan)
  const full = circuit.over ? [] : pairFault(plan, lineId)
  if (full.length > 0) return bad(...full)
  const stations = new Set(stationsOfCircuit(plan, circuit))
  if (!stations.has(line.from) && !stations.has(line.to)) {
    const message = `${lineName(plan, line)} does not touch ${circuitName(plan, circuit)}: take in the lines between them first.`
    return bad({ code: 'unconnected', at: lineId, message })
  }
  return withSoundRiders(plan, withCircuit(plan, { ...circuit, lines: [...circuit.lines, lineId] }))
}

function pairFault(plan: Plan, id: LineId) {
  const line = plan.lines.get(id)
  if (!line || sparePairs(plan, line) > 0) return []
  const used = line.pairs === 1 ? 'The one pair' : `All ${line.pairs} pairs`
  const message = `${used} of ${lineName(plan, line)} ${line.pairs === 1 ? 'is' : 'are'} in use: give the line another pair, or take it out of a circuit first.`
  return [{ code: 'no-spare-pair', at: id, message }]
}

/** Takes a line out of a circuit and leaves it lying. A circuit that falls apart becomes several. */
export const takeLineOut = (plan: Plan, id: CircuitId, line: LineId): Plan =>
  withLinesOut(plan, new Set([line]), id)

/** Puts a telephone at a station of the circuit; `null` takes it away, and the station is a joint. */
export function setSet(plan: Plan, id: CircuitId, station: StationId, set: string | null): Plan {
  const circuit = plan.circuits.get(id)
  if (!circuit || (circuit.sets.get(station) ?? null) === set) return plan
  if (set === null) return withCircuit(plan, { ...circuit, sets: without(circuit.sets, new Set([station])) })
  const known = [...plan.catalog.sets, ...BUILT_IN.sets].some((each) => each.id === set)
  if (!known || !stationsOfCircuit(plan, circuit).includes(station)) return plan
  const rod = { [station]: circuit.electrodeOhms?.[station] ?? DEFAULT_ELECTRODE_OHMS }
  return withCircuit(plan, {
    ...circuit,
    sets: new Map(circuit.sets).set(station, set),
    ...(circuit.over === 'simplex' && { electrodeOhms: { ...circuit.electrodeOhms, ...rod } }),
  })
}

/** Puts a supply at a station of the circuit; `null` makes every set feed itself. None whose current would have to pass a coil. */
export function setSupply(
  plan: Plan,
  id: CircuitId,
  supply: { readonly type: string; readonly at: StationId } | null,
): Plan {
  const circuit = plan.circuits.get(id)
  if (!circuit || (circuit.supply?.type === supply?.type && circuit.supply?.at === supply?.at)) return plan
  if (supply === null) return withCircuit(plan, { ...circuit, supply })
  const known = [...plan.catalog.supplies, ...BUILT_IN.supplies].some((each) => each.id === supply.type)
  if (!known || !stationsOfCircuit(plan, circuit).includes(supply.at)) return plan
  const placed = { ...circuit.supply, type: supply.type, at: supply.at }
  const sound = withSoundRiders(plan, withCircuit(plan, { ...circuit, supply: placed }))
  return sound.ok ? sound.value : plan
}

/** Moves the supply to another station of the circuit. */
export function moveSupply(plan: Plan, id: CircuitId, at: StationId): Plan {
  const supply = plan.circuits.get(id)?.supply
  return supply ? setSupply(plan, id, { type: supply.type, at }) : plan
}
