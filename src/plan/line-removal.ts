import { connectedPieces, stationsOfCircuit } from './circuit-topology'
import { recordsWithout } from './field-records'
import type { CircuitId, LineId, StationId } from './id'
import type { Circuit, Plan } from './plan'
import { without } from './with-feature'

/** The plan without these lines and what was recorded on them. A circuit that falls apart for want of them becomes several. */
export function withoutLines(plan: Plan, gone: ReadonlySet<LineId>): Plan {
  if (gone.size === 0) return plan
  const { field: _, ...left } = withLinesOut(plan, gone)
  return { ...left, lines: without(plan.lines, gone), ...recordsWithout(plan, gone) }
}

/**
 * The plan with these lines taken out of one circuit, or of all. The piece with the supply, else the one with the first
 * line, stays the circuit that it was; every other piece becomes a circuit of its own; one left with no line goes away.
 */
export function withLinesOut(plan: Plan, gone: ReadonlySet<LineId>, from?: CircuitId): Plan {
  const ids = new Set(plan.circuits.keys())
  const circuits = new Map<CircuitId, Circuit>()
  let changed = false
  for (const circuit of plan.circuits.values()) {
    const touched = (from === undefined || from === circuit.id) && circuit.lines.some((id) => gone.has(id))
    changed ||= touched
    const pieces = touched ? piecesLeft(plan, circuit, gone, ids) : [circuit]
    for (const piece of pieces) circuits.set(piece.id, piece)
  }
  return changed ? { ...plan, circuits } : plan
}

function piecesLeft(
  plan: Plan,
  circuit: Circuit,
  gone: ReadonlySet<LineId>,
  ids: Set<CircuitId>,
): readonly Circuit[] {
  const left = circuit.lines.filter((id) => !gone.has(id))
  const pieces = connectedPieces(left, (id) => plan.lines.get(id)).map((lines) => {
    const stations = new Set(stationsOfCircuit(plan, { lines }))
    const sets = new Map([...circuit.sets].filter(([station]) => stations.has(station)))
    const supply = circuit.supply && stations.has(circuit.supply.at) ? circuit.supply : null
    const rods = Object.entries(circuit.electrodeOhms ?? {}).filter(([at]) => stations.has(at as StationId))
    const electrodeOhms = circuit.electrodeOhms && { electrodeOhms: Object.fromEntries(rods) }
    return { ...circuit, lines, sets, supply, ...electrodeOhms }
  })
  const heir = pieces.find((piece) => piece.supply) ?? pieces[0]
  return pieces.map((piece) => {
    if (piece === heir) return piece
    const { unknown: _, ...known } = piece
    return { ...known, ...nameApart(circuit, ids) }
  })
}

/** The next free id and name after those of the circuit that a piece came from; the id counts as taken from now on. */
function nameApart({ id, name }: Circuit, ids: Set<CircuitId>): Pick<Circuit, 'id' | 'name'> {
  let count = 2
  while (ids.has(`${id}-${count}` as CircuitId)) count++
  const apart = `${id}-${count}` as CircuitId
  ids.add(apart)
  return { id: apart, name: `${name} ${count}` }
}
