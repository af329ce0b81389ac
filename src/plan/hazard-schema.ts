import { part, usually } from '../schema/kept'
import { oneOf, text } from '../schema/plain-values'
import { either, isObject } from '../schema/schema'
import { AREA, featureOf, geometryOf, PATH } from './feature-schema'

export const HAZARD_KINDS = ['road', 'track', 'railway', 'water', 'power-line', 'keep-out'] as const

/** What is in the way. A member more is a line more: type, reading, faults and the order in a file follow. */
export const HAZARD_MEMBERS = part('The member "properties"', {
  hazard: oneOf('The kind of hazard', HAZARD_KINDS),
  name: usually(text('The name'), ''),
})

export const HAZARD_GEOMETRY = either(
  geometryOf('LineString', PATH, ['LineString', 'Polygon']),
  geometryOf('Polygon', AREA),
  (value) => isObject(value) && value.type === 'Polygon',
)

export const HAZARD = featureOf('The hazard', 'hazard', HAZARD_MEMBERS, HAZARD_GEOMETRY)
