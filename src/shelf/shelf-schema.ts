import { OWN_ENTRIES } from '../plan/own-entries'
import { part, twoOf, usually } from '../schema/kept'
import {
  either,
  figure,
  type Held,
  idText,
  isObject,
  listOf,
  oneOf,
  optional,
  reference,
  text,
} from '../schema/schema'

/** Most places for which nets are sought: beyond, a net is planned by hand, part by part. */
export const MOST_PLACES = 20

const howMany = (what: string) => figure({ what, min: 0, max: 10_000, unit: '', whole: true })

const PLACE = part('The place', {
  id: optional(idText('The id of the place')),
  name: optional(text('The name of the place')),
  lon: optional(figure({ what: 'The longitude', min: -180, max: 180, unit: '°' })),
  lat: optional(figure({ what: 'The latitude', min: -90, max: 90, unit: '°' })),
})

const DISTANCE = figure({ what: 'The distance', min: 0, max: 500_000, unit: 'm' })

/** What there is, as a shelf file has it and as it is kept. */
export const HAVE = part('What there is', {
  wires: usually(
    listOf(
      'The list of wires',
      part('The wire', {
        wire: reference('The wire', 'wire'),
        lengthM: figure({ what: 'The length of the wire', min: 0, max: 1e6, unit: 'm', above: true }),
        count: usually(howMany('The count of such lengths'), 1),
      }),
      { max: 200 },
    ),
    [],
  ),
  sets: usually(
    listOf(
      'The list of sets',
      part('The set', {
        set: reference('The set', 'set'),
        count: usually(howMany('The count of such sets'), 1),
      }),
      { max: 200 },
    ),
    [],
  ),
  supplies: usually(
    listOf(
      'The list of supplies',
      part('The supply', {
        supply: reference('The supply', 'supply'),
        count: usually(howMany('The count of such supplies'), 1),
      }),
      { max: 200 },
    ),
    [],
  ),
  cells: usually(
    listOf(
      'The list of cells',
      part('The cell', {
        cell: reference('The cell', 'cell'),
        count: usually(howMany('The count of such cells'), 1),
      }),
      { max: 200 },
    ),
    [],
  ),
})

/**
 * What stands in a shelf file: places, who must reach whom, and what there is to do it with. A member more is a line more: type, reading
 * and faults follow. What the members say against each other is found by `shelfFaults`.
 */
export const SHELF_FILE = part('The shelf', {
  title: optional(text('The title')),
  places: listOf(
    'The list of places',
    either(PLACE, text('The name of the place'), (value) => !isObject(value)),
    { min: 2, max: MOST_PLACES },
  ),
  /** How far it is by the way that the wire takes, from each place to each. */
  distancesM: optional(listOf('The list of distances', listOf('The row of distances', DISTANCE))),
  talk: usually(
    either(
      oneOf('Who talks with whom', ['all']),
      listOf('The list of pairs that talk', twoOf('The pair', reference('The place', 'place')), { min: 1 }),
      Array.isArray,
    ),
    'all',
  ),
  /** Of those, who may agree on times to call, and need not be rung; absent: nobody. */
  agree: optional(
    either(
      oneOf('Who may agree on times', ['all']),
      listOf('The list of pairs that agree on times', twoOf('The pair', reference('The place', 'place'))),
      Array.isArray,
    ),
  ),
  have: usually(HAVE, {}),
  catalog: usually(OWN_ENTRIES, {}),
})

export type ShelfFile = Held<typeof SHELF_FILE>
