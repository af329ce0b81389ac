import type { Position } from '../geo/position'
import { connectedPieces } from './circuit-topology'
import type { CircuitId, LineId, StationId } from './id'
import { moveBend } from './leg-edits'
import { setWire } from './line-edits'
import { withoutLines } from './line-removal'
import { type Circuit, lineName, type Plan } from './plan'
import { addStation, moveStation, removeStation } from './station-edits'
import { withCircuit, withLine } from './with-feature'

/** Stations and lines that are handled together. */
export interface Several {
  readonly stations: readonly StationId[]
  readonly lines: readonly LineId[]
}

/** Moves stations, and the bends of lines, each by the same step. */
export function moveSeveral(
  plan: Plan,
  { stations, lines }: Several,
  step: (from: Position) => Position,
): Plan {
  const stood = stations.reduce((next, id) => {
    const station = next.stations.get(id)
    return station ? moveStation(next, id, step(station.position)) : next
  }, plan)
  return lines.reduce(
    (next, id) =>
      (plan.lines.get(id)?.bends ?? []).reduce(
        (bent, bend, index) => moveBend(bent, id, index, step(bend)),
        next,
      ),
    stood,
  )
}

export const wireSeveral = (plan: Plan, { lines }: Several, wire: string): Plan =>
  lines.reduce((next, id) => setWire(next, id, wire), plan)

export const removeSeveral = (plan: Plan, { stations, lines }: Several): Plan =>
  stations.reduce(removeStation, withoutLines(plan, new Set(lines.filter((id) => plan.lines.has(id)))))

/** What names the copies. */
export interface CopyIds {
  readonly station: (plan: Plan) => StationId
  readonly line: (plan: Plan) => LineId
  readonly circuit: (plan: Plan) => CircuitId
}

/**
 * A copy of stations and lines, each a step away: the ends of the lines come along, and so do telephones and supplies, in circuits of
 * their own.
 */
export function copySeveral(
  plan: Plan,
  several: Several,
  step: (from: Position) => Position,
  ids: CopyIds,
): { readonly plan: Plan; readonly copies: Several } {
  const lines = several.lines.flatMap((id) => plan.lines.get(id) ?? [])
  const stations = new Set([...several.stations, ...lines.flatMap(({ from, to }) => [from, to])])
  let next = plan
  const stationCopies = new Map<StationId, StationId>()
  for (const id of stations) {
    const station = plan.stations.get(id)
    if (!station) continue
    const copy = ids.station(next)
    stationCopies.set(id, copy)
    const { name, note, position } = station
    next = addStation(next, { id: copy, name: freeName(next, name), note, position: step(position) })
  }
  const lineCopies = new Map<LineId, LineId>()
  for (const { unknown: _, endElevationsM: __, ...line } of lines) {
    const copy = ids.line(next)
    lineCopies.set(line.id, copy)
    const [from, to] = [stationCopies.get(line.from)!, stationCopies.get(line.to)!]
    next = withLine(next, { ...line, id: copy, from, to, bends: line.bends.map(step) })
  }
  for (const circuit of plan.circuits.values()) {
    const copied = circuit.lines.filter((id) => lineCopies.has(id))
    for (const piece of connectedPieces(copied, (id) => plan.lines.get(id)))
      next = withCircuit(next, copyOf(next, circuit, piece, ids.circuit(next)))
  }
  return {
    plan: next,
    copies: { stations: [...stationCopies.values()], lines: [...lineCopies.values()] },
  }

  function copyOf(drawn: Plan, circuit: Circuit, piece: readonly LineId[], id: CircuitId): Circuit {
    const reached = new Set(piece.flatMap((line) => [plan.lines.get(line)!.from, plan.lines.get(line)!.to]))
    const sets = [...circuit.sets].filter(([station]) => reached.has(station))
    const { supply } = circuit
    return {
      id,
      name: lineName(drawn, drawn.lines.get(lineCopies.get(piece[0]!)!)!),
      lines: piece.map((line) => lineCopies.get(line)!),
      sets: new Map(sets.map(([station, set]) => [stationCopies.get(station)!, set])),
      supply:
        supply && reached.has(supply.at) ? { type: supply.type, at: stationCopies.get(supply.at)! } : null,
    }
  }
}

/** `Ford 2`, `Ford 3` … after `Ford`; after `Station 1` the next station that is free. */
function freeName(plan: Plan, name: string): string {
  const taken = new Set([...plan.stations.values()].map((station) => station.name))
  const stem = name.replace(/ \d+$/, '')
  let count = 2
  while (taken.has(`${stem} ${count}`)) count++
  return `${stem} ${count}`
}
