import { LOADING_DISTRICTS } from '../catalog/overhead-loading'
import { part, unless, unlessEmpty, usually } from '../schema/kept'
import { figure, oneOf, reference, text } from '../schema/plain-values'
import { listOf, optional } from '../schema/schema'
import { CIRCUITS } from './circuit-schema'
import { FIELD } from './field-schema'
import { OWN_ENTRIES } from './own-entries'
import { WORK_MEMBERS } from './work'

// A member more of any of these is a line more: type, reading, what holds without it, faults and the order in a file follow.

const slack = (where: string) => figure({ what: `The slack of ${where}`, min: 0, max: 500, unit: '%' })

/** How much wire is laid for a way, lay by lay, %. */
export const SLACK = part('The member "slackPct"', {
  surface: usually(slack('surface legs'), 20),
  overhead: usually(slack('overhead legs'), 3),
  buried: usually(slack('buried legs'), 5),
  water: usually(slack('legs in water'), 15),
})

/** What one repeating coil takes off speech and off ringing, dB. */
export const COIL = part('The member "coil"', {
  voiceDb: usually(figure({ what: 'The speech loss of a coil', min: 0, max: 200, unit: 'dB' }), 0.5),
  ringDb: usually(figure({ what: 'The ringing loss of a coil', min: 0, max: 200, unit: 'dB' }), 1),
})

/** Allowances; PLAN-FORMAT gives their meaning. A person can change each of them. */
export const ALLOWANCES = part('The member "allowances"', {
  slackPct: usually(SLACK, {}),
  /** Mid-span sag of overhead legs as a percentage of the span. */
  sagPct: usually(figure({ what: 'The sag of overhead legs', min: 0, max: 50, unit: '%' }), 2),
  /** Wire left at each end of a line, m. */
  tailM: usually(figure({ what: 'The tail', min: 0, max: 1000, unit: 'm' }), 8),
  /** Wire used up by one splice, m. */
  spliceWasteM: usually(figure({ what: 'The wire used up by a splice', min: 0, max: 100, unit: 'm' }), 0.5),
  /** Spare wire carried beyond what the plan needs, %. */
  reservePct: usually(figure({ what: 'The reserve', min: 0, max: 500, unit: '%' }), 10),
  /** Ohms of each wire of each splice; absent: none. */
  spliceOhms: unless(0, figure({ what: 'The resistance of a splice', min: 0, max: 1000, unit: 'Ω' })),
  /** Leakage of each splice when wet, µS; absent: none. */
  spliceMicroS: unless(0, figure({ what: 'The leakage of a splice', min: 0, max: 1e5, unit: 'µS' })),
  /** Loss of one repeating coil to speech and to ringing, dB; absent: `DEFAULT_COIL`. */
  coil: optional(COIL),
})

/** Spools at hand. */
export const STOCK = part('The entry', {
  wire: reference('The wire', 'wire'),
  lengthM: figure({ what: 'The length of a spool', min: 0, max: 1e6, unit: 'm', above: true }),
  count: figure({ what: 'The count of spools', min: 0, max: 100_000, unit: '', whole: true }),
})

/** How a plan's papers are wanted; each member where a person has said it. */
export const PAPERS = part('The member "papers"', {
  revision: optional(text('The revision')),
  /** Name of the size of a sheet. */
  size: optional(text('The size of the sheets')),
  /** Names of the kinds of paper that are printed. */
  kinds: optional(listOf('The list of papers', text('The paper'))),
})

/** All that a plan says beside its features. */
export const SETTINGS = part('The plan', {
  title: usually(text('The title'), 'New plan'),
  note: usually(text('The note'), ''),
  weather: usually(oneOf('The weather', ['dry', 'wet']), 'dry'),
  wireTempC: usually(figure({ what: 'The temperature of the wire', min: -60, max: 90, unit: '°C' }), 20),
  /** How much ice and wind wire in the air must bear; absent: not said, and the least that a line does not bear is told. */
  loadingDistrict: optional(oneOf('The loading district', LOADING_DISTRICTS)),
  allowances: usually(ALLOWANCES, {}),
  catalog: usually(OWN_ENTRIES, {}),
  circuits: usually(CIRCUITS, []),
  stock: usually(listOf('The stock', STOCK), []),
  work: unlessEmpty(WORK_MEMBERS),
  papers: unlessEmpty(PAPERS),
  /** What was laid and read, in the order in which it came in. */
  field: unlessEmpty(FIELD),
})
