import { OWN_ENTRIES } from '../plan/own-entries'
import { EMPTY_PLAN } from '../plan/plan'
import { part, twoOf, usually } from '../schema/kept'
import { figure, idText, mark, oneOf, reference, text } from '../schema/plain-values'
import { either, type Held, isObject, listOf, optional, type Schema } from '../schema/schema'

/** Ground as it mostly is where people farm. Allowance. */
export const USUAL_SOIL = 'clay-loam'

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

const measured = <K extends string>(figures: Readonly<Record<K, Schema<number>>>) =>
  optional(
    part(
      'What was measured',
      Object.fromEntries(
        Object.entries<Schema<number>>(figures).map(([name, of]) => [name, optional(of)]),
      ) as {
        readonly [N in K]: ReturnType<typeof optional<Schema<number>>>
      },
    ),
  )

/** Figures that a meter reads of things on a shelf, by the members of their entries; of a rod, what it resists where it is driven. */
export const MEASURED = {
  wires: { loopOhmPerKm: figure({ what: 'The loop resistance', min: 0.01, max: 1e5, unit: 'Ω/km' }) },
  sets: {
    'ringer.minVolts': figure({ what: 'The least volts of the bell', min: 0.1, max: 1000, unit: 'V' }),
  },
  supplies: {
    volts: figure({ what: 'The voltage', min: 0.1, max: 1000, unit: 'V' }),
    'ring.volts': figure({ what: 'The ringing voltage', min: 0.1, max: 1000, unit: 'V' }),
  },
  cells: { volts: figure({ what: 'The voltage of the cell', min: 0.1, max: 100, unit: 'V' }) },
  rods: { ohms: figure({ what: 'The resistance of the rod', min: 0.1, max: 1e5, unit: 'Ω' }) },
} as const

/** What there is, as a shelf file has it and as it is kept. */
export const HAVE = part('What there is', {
  wires: usually(
    listOf(
      'The list of wires',
      part('The wire', {
        wire: reference('The wire', 'wire'),
        lengthM: figure({ what: 'The length of the wire', min: 0, max: 1e6, unit: 'm', above: true }),
        count: usually(howMany('The count of such lengths'), 1),
        /** Pairs of a cable that may be laid as one; absent: one. */
        pairs: optional(figure({ what: 'The number of pairs', min: 1, max: 100, unit: '', whole: true })),
        /** One wire, and no pair of them. */
        single: optional(mark('The mark "single"')),
        measured: measured(MEASURED.wires),
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
        measured: measured(MEASURED.sets),
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
        measured: measured(MEASURED.supplies),
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
        measured: measured(MEASURED.cells),
      }),
      { max: 200 },
    ),
    [],
  ),
  /** Earth rods, for a return through the ground; absent: none. */
  rods: usually(
    listOf(
      'The list of earth rods',
      part('The rod', {
        rod: reference('The rod', 'earth rod'),
        count: usually(howMany('The count of such rods'), 1),
        measured: measured(MEASURED.rods),
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
  /** In which nets are judged today; the worst weather is the same for all. */
  weather: usually(oneOf('The weather', ['dry', 'wet']), EMPTY_PLAN.weather),
  wireTempC: usually(
    figure({ what: 'The temperature of the wire', min: -60, max: 90, unit: '°C' }),
    EMPTY_PLAN.wireTempC,
  ),
  /** The ground in which rods are driven. */
  soil: usually(reference('The soil', 'soil'), USUAL_SOIL),
  have: usually(HAVE, {}),
  catalog: usually(OWN_ENTRIES, {}),
})

export type ShelfFile = Held<typeof SHELF_FILE>
