import { part, usually } from '../schema/kept'
import { text } from '../schema/plain-values'
import { featureOf, geometryOf, POSITION } from './feature-schema'

/** A place with a telephone, or a joint. A member more is a line more: type, reading, faults and the order in a file follow. */
export const STATION_MEMBERS = part('The member "properties"', {
  name: usually(text('The name'), ({ id }: { readonly id: string }) => id),
  note: usually(text('The note'), ''),
})

export const STATION = featureOf('The station', 'station', STATION_MEMBERS, geometryOf('Point', POSITION))
