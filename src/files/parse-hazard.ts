import type { HazardId } from '../plan/id'
import { HAZARD_KINDS, type Hazard } from '../plan/plan'
import { listOf, members, oneOf, text } from '../plan/shape'
import { isObject } from '../schema/schema'
import { type FeatureFile, featureRest, featureShape } from './feature-shape'
import { position, ring, toPosition } from './parse-position'

const HAZARD_PATH = listOf('The list of vertices', position, { min: 2 })
const HAZARD_AREA = listOf('The list of rings', ring, { min: 1 })

export const HAZARD_SHAPE = featureShape(
  'The hazard',
  members(
    'The member "properties"',
    { hazard: oneOf('The kind of hazard', HAZARD_KINDS) },
    { name: text('The name') },
  ),
  (value, at, faults) => {
    const isArea = isObject(value) && value.type === 'Polygon'
    const type = oneOf('The type', ['LineString', 'Polygon'])
    members('The member "geometry"', { type, coordinates: isArea ? HAZARD_AREA : HAZARD_PATH })(
      value,
      at,
      faults,
    )
  },
)

/** A hazard that has passed `HAZARD_SHAPE`. */
export function toHazard(value: unknown): Hazard {
  const file = value as FeatureFile<{ hazard: Hazard['hazard']; name?: string }, Hazard['geometry']>
  const { geometry } = file
  return {
    id: file.id as HazardId,
    hazard: file.properties.hazard,
    name: file.properties.name ?? '',
    geometry:
      geometry.type === 'Polygon'
        ? { type: 'Polygon', coordinates: geometry.coordinates.map((each) => each.map(toPosition)) }
        : { type: 'LineString', coordinates: geometry.coordinates.map(toPosition) },
    ...featureRest(file, ['hazard', 'name']),
  }
}
