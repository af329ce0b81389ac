import type { Position } from '../geo/position'
import { placeOf } from '../journal/keys'
import type { LineId, StationId } from '../plan/id'
import { endsOf, type Hazard, type Line, type Plan } from '../plan/plan'

/** Where a choice that does not hold would have a thing lie; of a station the way there from where it stands. Empty for what lies nowhere. */
export function pathOfChoice(
  plan: Plan,
  key: string,
  value: unknown,
): { readonly path: readonly Position[]; readonly isPlace: boolean } {
  const isPlace = placeOf(key)?.member === 'position'
  return { path: value === undefined ? [] : pathOf(plan, key, value), isPlace }
}

function pathOf(plan: Plan, key: string, value: unknown): readonly Position[] {
  const { kind, id = '', member } = placeOf(key) ?? {}
  const line = kind === 'lines' && member === 'route' ? plan.lines.get(id as LineId) : undefined
  if (line) {
    const [from, to] = endsOf(plan, line)
    return [from, ...(value as Pick<Line, 'bends'>).bends, to]
  }
  const station =
    kind === 'stations' && member === 'position' ? plan.stations.get(id as StationId) : undefined
  if (station) return [station.position, value as Position]
  if (kind !== 'hazards' || member !== 'geometry') return []
  const { type, coordinates } = value as Hazard['geometry']
  return (type === 'Polygon' ? (coordinates[0] ?? []) : coordinates) as readonly Position[]
}
