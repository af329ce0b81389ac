import { type Check, idText, members, oneOf } from '../plan/shape'
import { restMember, restOf } from './unknown-members'

/** A feature that has passed its shape. */
export interface FeatureFile<P, G> {
  readonly id: string
  readonly properties: P
  readonly geometry: G
}

export const featureShape = (what: string, properties: Check, geometry: Check): Check =>
  members(what, { type: oneOf('The type', ['Feature']), id: idText('The id'), properties, geometry })

/** `{ rest }` with the unknown members of a feature, or nothing. */
export const featureRest = (value: FeatureFile<object, object>, properties: readonly string[]) =>
  restMember({
    feature: restOf(value, ['type', 'id', 'properties', 'geometry']),
    properties: restOf(value.properties, ['kind', ...properties]),
    geometry: restOf(value.geometry, ['type', 'coordinates']),
  })
