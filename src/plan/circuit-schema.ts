import { listById, mapOf, orNull, part, unless, usually } from '../schema/kept'
import { idText, oneOf, reference, text } from '../schema/plain-values'
import { listOf, optional, recordOf, type Schema } from '../schema/schema'
import type { CircuitId, LineId, StationId } from './id'
import { ELECTRODE } from './line-schema'

const station = reference<StationId>('The station', 'station')

/**
 * One electrical path over one pair of each of its lines; where its lines meet at a station they are joined. A member more is a line
 * more: type, reading, faults and the order in a file follow.
 */
export const CIRCUIT = part('The circuit', {
  id: idText('The id of the circuit') as unknown as Schema<CircuitId>,
  name: usually(text('The name'), ({ id }: { readonly id: string }) => id),
  lines: listOf('The list of lines', reference<LineId>('The line', 'line'), { min: 1 }),
  /** The telephone at each station that has one, by catalog id; other stations are joints. */
  sets: usually(mapOf('The member "sets"', station, reference('The set', 'set')), {}),
  /** `null`: every set feeds itself and rings with its own generator. */
  supply: usually(
    orNull(
      part('The supply', {
        type: reference('The supply', 'supply'),
        at: reference<StationId>('The station of the supply', 'station'),
      }),
    ),
    null,
  ),
  /**
   * A circuit over two pairs of each of its lines, both wires of each as one conductor; or over one pair so, and the earth. Absent: over
   * a pair of its own.
   */
  over: unless('pair', oneOf('What the circuit lies over', ['pair', 'phantom', 'simplex'])),
  /** Simplex only: resistance of the earth electrode at each station with a set, Ω. */
  electrodeOhms: optional(recordOf('The member "electrodeOhms"', station, ELECTRODE)),
})

export const CIRCUITS = listById('The list of circuits', CIRCUIT)
