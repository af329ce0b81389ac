import type { Position } from '../geo/position'
import type { StationId } from '../plan/id'
import type { Station } from '../plan/plan'
import { members, oneOf, text } from '../plan/shape'
import { type FeatureFile, featureRest, featureShape } from './feature-shape'
import { position, toPosition } from './parse-position'

export const STATION_SHAPE = featureShape(
  'The station',
  members('The member "properties"', {}, { name: text('The name'), note: text('The note') }),
  members('The member "geometry"', { type: oneOf('The type', ['Point']), coordinates: position }),
)

/** A station that has passed `STATION_SHAPE`. */
export function toStation(value: unknown): Station {
  const file = value as FeatureFile<{ name?: string; note?: string }, { coordinates: Position }>
  return {
    id: file.id as StationId,
    name: file.properties.name ?? file.id,
    note: file.properties.note ?? '',
    position: toPosition(file.geometry.coordinates),
    ...featureRest(file, ['name', 'note']),
  }
}
