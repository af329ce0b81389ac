import type { Position } from '../geo/position'
import { placeOf } from '../journal/keys'
import type { CircuitId, HazardId, LineId, StationId } from '../plan/id'
import { type Hazard, type Plan, verticesOf } from '../plan/plan'

/** A thing of the plan that lies on the map. */
export type ThingOnMap = (
  | { readonly kind: 'station'; readonly id: StationId }
  | { readonly kind: 'line'; readonly id: LineId; readonly legs: readonly number[] }
  | { readonly kind: 'circuit'; readonly id: CircuitId }
  | { readonly kind: 'hazard'; readonly id: HazardId }
) & { readonly position: Position }

/** The thing that a key of the journal belongs to, with a place of it; undefined where it has none. */
export function thingOfKey(plan: Plan, key: string): ThingOnMap | undefined {
  const place = placeOf(key)
  switch (place?.kind) {
    case 'stations': {
      const station = plan.stations.get(place.id as StationId)
      return station && { kind: 'station', id: station.id, position: station.position }
    }
    case 'lines': {
      const position = onLine(plan, place.id as LineId)
      return position && { kind: 'line', id: place.id as LineId, legs: [], position }
    }
    case 'circuits': {
      const circuit = plan.circuits.get(place.id as CircuitId)
      const at = circuit?.supply && plan.stations.get(circuit.supply.at)?.position
      const position = at ?? (circuit?.lines[0] && onLine(plan, circuit.lines[0]))
      return circuit && position ? { kind: 'circuit', id: circuit.id, position } : undefined
    }
    case 'hazards': {
      const hazard = plan.hazards.get(place.id as HazardId)
      const position = hazard && firstOf(hazard.geometry)
      return hazard && position ? { kind: 'hazard', id: hazard.id, position } : undefined
    }
    default:
      return undefined
  }
}

const firstOf = (geometry: Hazard['geometry']): Position | undefined =>
  (geometry.type === 'Polygon' ? geometry.coordinates[0]?.[0] : geometry.coordinates[0]) as
    | Position
    | undefined

/** A vertex in the midst of a line, or half way between its ends. */
function onLine(plan: Plan, id: LineId): Position | undefined {
  const line = plan.lines.get(id)
  if (!line) return undefined
  const path = verticesOf(plan, line)
  const [a, b] = [path[Math.floor((path.length - 1) / 2)], path[Math.ceil((path.length - 1) / 2)]]
  return a && b && ([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] as const)
}
