import { part, twoOf, unless, usually } from '../schema/kept'
import { figure, oneOf, reference, text, truth } from '../schema/plain-values'
import { listOf, optional } from '../schema/schema'
import { featureOf, geometryOf, PATH } from './feature-schema'
import type { StationId } from './id'
import { LAYS } from './lays'

/**
 * The stretch between two neighbouring vertices of a line. What is absent comes from the plan's allowances. A member more is a line
 * more: type, reading, faults and the order in a file follow.
 */
export const LEG = part('The leg', {
  lay: oneOf('The lay', LAYS),
  slackPct: optional(figure({ what: 'The slack of a leg', min: 0, max: 500, unit: '%' })),
  sagPct: optional(figure({ what: 'The sag of a leg', min: 0, max: 50, unit: '%' })),
  /** Overhead: height of the wire over the ground at its supports, m, and the distance from one to the next, m. */
  supportM: optional(figure({ what: 'The height of the supports of a leg', min: 0.5, max: 60, unit: 'm' })),
  spanM: optional(figure({ what: 'The span of a leg', min: 5, max: 500, unit: 'm' })),
  note: optional(text('The note')),
})

/** Resistance of an earth electrode, Ω. */
export const ELECTRODE = figure({ what: 'The resistance of an electrode', min: 0, max: 1e6, unit: 'Ω' })

/** A run of wire, as far as it is not its course. A member more is a line more, as for a leg. */
export const LINE_MEMBERS = part('The member "properties"', {
  from: reference<StationId>('The station where the line starts', 'station'),
  to: reference<StationId>('The station where the line ends', 'station'),
  /** Id of a wire in the catalog. */
  wire: reference('The wire', 'wire'),
  pairs: usually(figure({ what: 'The number of pairs', min: 1, max: 100, unit: '', whole: true }), 1),
  return: usually(oneOf('The return', ['pair', 'earth']), 'pair'),
  /** Earth return only: resistance of the electrodes at `from` and at `to`, Ω. */
  electrodeOhms: optional(twoOf('The list of electrodes', ELECTRODE)),
  /** Old, nicked wire: it leaks as its `wornMicroSPerKm` when wet, and ten times as much as new when dry. */
  worn: unless(false, truth('The mark "worn"')),
  /** One leg more than there are bends. */
  legs: listOf('The list of legs', LEG),
})

export const LINE = featureOf('The line', 'line', LINE_MEMBERS, geometryOf('LineString', PATH))
