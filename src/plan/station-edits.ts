import type { Position } from '../geo/position'
import { onGlobe, samePosition } from '../geo/position'
import type { CircuitId, StationId } from './id'
import { withoutLines } from './line-removal'
import { type Circuit, type Plan, plainLineName, type Station } from './plan'
import { assertNewFeature, without, withStation } from './with-feature'

export function addStation(
  plan: Plan,
  { id, name, position, note = '' }: { id: StationId; name: string; position: Position; note?: string },
): Plan {
  assertNewFeature(plan, id)
  return withStation(plan, { id, name, note, position: onGlobe(position) })
}

/** Moves a station, and with it the ends of its lines. */
export function moveStation(plan: Plan, id: StationId, to: Position): Plan {
  const station = plan.stations.get(id)
  const position = onGlobe(to)
  if (!station || samePosition(station.position, position)) return plan
  return withFreshEnds(withStation(plan, { ...station, position }), id)
}

/** An elevation that a line's end had of its own held for the old place only. */
function withFreshEnds(plan: Plan, id: StationId): Plan {
  const stale = [...plan.lines.values()].filter(
    (line) => line.endElevationsM && (line.from === id || line.to === id),
  )
  if (stale.length === 0) return plan
  const lines = new Map(plan.lines)
  for (const { endElevationsM, ...line } of stale) {
    const [atFrom, atTo] = endElevationsM ?? [null, null]
    const kept = [line.from === id ? null : atFrom, line.to === id ? null : atTo] as const
    const none = kept[0] === null && kept[1] === null
    lines.set(line.id, none ? line : { ...line, endElevationsM: kept })
  }
  return { ...plan, lines }
}

/** Renames a station. A circuit that is still called after its first line, as it was when it was drawn, follows the name. */
export function renameStation(plan: Plan, id: StationId, name: string): Plan {
  const renamed = changeStation(plan, id, { name })
  if (renamed === plan) return plan
  let circuits: Map<CircuitId, Circuit> | undefined
  for (const circuit of plan.circuits.values()) {
    const first = plan.lines.get(circuit.lines[0]!)
    if (!first || (first.from !== id && first.to !== id) || circuit.name !== plainLineName(plan, first))
      continue
    circuits ??= new Map(plan.circuits)
    circuits.set(circuit.id, { ...circuit, name: plainLineName(renamed, first) })
  }
  return circuits ? { ...renamed, circuits } : renamed
}

export const noteStation = (plan: Plan, id: StationId, note: string): Plan =>
  changeStation(plan, id, { note })

function changeStation(plan: Plan, id: StationId, change: Partial<Pick<Station, 'name' | 'note'>>): Plan {
  const station = plan.stations.get(id)
  if (!station) return plan
  const next = { ...station, ...change }
  return next.name === station.name && next.note === station.note ? plan : withStation(plan, next)
}

/** Removes a station with all that hangs on it: its lines, its sets, the supplies that stand there. */
export function removeStation(plan: Plan, id: StationId): Plan {
  if (!plan.stations.has(id)) return plan
  const lines = [...plan.lines.values()].filter((line) => line.from === id || line.to === id)
  const left = withoutLines(plan, new Set(lines.map((line) => line.id)))
  return { ...left, stations: without(left.stations, new Set([id])) }
}
