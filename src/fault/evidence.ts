import { METERED } from '../plan/field-schema'
import { part, twoOf } from '../schema/kept'
import { figure, judged, oneOf, reference } from '../schema/plain-values'
import { chosen, type Held, isObject, listOf, members, optional } from '../schema/schema'

// What is known of a dead or ailing circuit. A kind more is a part more; its members follow as in a plan.

const station = reference('The station', 'station')
const wireM = (what: string) => figure({ what, min: 0, max: 1e6, unit: 'm' })
const { far, what, value, meterPct, tempC, weather } = METERED

/** One wire of the pair against the earth, in the place of both wires against each other. */
const OF_ONE_WIRE = { wire: optional(oneOf('The wire', ['a', 'b'])) }

/** Where an instrument stands at a station, and which it looks to. */
const STANDING = { at: station, toward: station }
const METER = { meterPct, tempC, weather }
const READ = { far, what, value, ...METER, ...OF_ONE_WIRE }

const AT_STATION = part('The reading', { ...STANDING, ...READ })
const ON_LINE = part('The reading', {
  line: reference('The line', 'line'),
  wireM: wireM('The place of the meter'),
  toward: oneOf('The end that the meter looked to', ['from', 'to']),
  ...READ,
})
const isOk = judged<boolean>((value) =>
  typeof value === 'boolean'
    ? undefined
    : { code: 'wrong-type', message: 'The member "ok" must be true or false: say whether it did.' },
)
const TWO = twoOf('The pair of stations', station)
const RINGS = part('The evidence', { rings: TWO, ok: isOk })
const HEARS = part('The evidence', { hears: TWO, ok: isOk })
const ARM = figure({ what: 'The arm of the bridge', min: 0, max: 1e9, unit: '' })
const MURRAY = part('The bridge', { murray: twoOf('The list of arms', ARM), ...STANDING, ...METER })
const OHMS = figure({ what: 'The ohms of the bridge', min: 0, max: 1e9, unit: 'Ω' })
const VARLEY = part('The bridge', { varley: OHMS, loopOhms: optional(OHMS), ...STANDING, ...METER })
const SOUND = part('The evidence', {
  sound: part('The stretch', {
    line: reference('The line', 'line'),
    fromM: wireM('The start of the stretch'),
    toM: wireM('The end of the stretch'),
  }),
})
const ECHO = {
  echo: part('The echo', {
    /** There and back, nanoseconds; or m, as an instrument shows them that is set to so many per cent of the speed of light. */
    ns: optional(figure({ what: 'The time of the echo', min: 0, max: 1e8, unit: 'ns' })),
    m: optional(wireM('The distance of the echo')),
    velocityPct: optional(
      figure({ what: 'The speed that the instrument is set to', min: 1, max: 100, unit: '%' }),
    ),
    /** Whether it swings as of an open end, or as of a short. */
    swing: optional(oneOf('The swing of the echo', ['up', 'down'])),
  }),
  meterPct,
  weather,
}
const ECHO_AT_STATION = part('The evidence', { ...STANDING, ...ECHO })
const ECHO_ON_LINE = part('The evidence', {
  line: reference('The line', 'line'),
  wireM: wireM('The place of the instrument'),
  toward: oneOf('The end that the instrument looked to', ['from', 'to']),
  ...ECHO,
})
const STRAY = part('The evidence', {
  /** What of another circuit comes through: its bell or its speech; `none`: nothing does. */
  stray: oneOf('What comes through', ['rings', 'heard', 'none']),
  at: station,
  circuit: optional(reference('The other circuit', 'circuit')),
})
const CRANK = part('The evidence', {
  crank: oneOf('How the crank turns', ['heavy', 'light', 'as-ever']),
  at: station,
})

/** A reading of the walk, or a stretch that was tested there, as the plan holds it. */
const RECORD = part('The evidence', { record: reference('The record', 'record') })

const KINDS = {
  record: RECORD,
  rings: RINGS,
  hears: HEARS,
  murray: MURRAY,
  varley: VARLEY,
  sound: SOUND,
  crank: CRANK,
  echo: ECHO_AT_STATION,
  stray: STRAY,
} as const

const UNKNOWN = judged<never>(() => ({
  code: 'unknown-evidence',
  message: `This is no evidence: give a reading with "what" and "value", or one of ${Object.keys(KINDS)
    .map((kind) => JSON.stringify(kind))
    .join(', ')}.`,
}))

const ITEM = chosen(members('The evidence', { what: UNKNOWN }), (given) => {
  if (!isObject(given)) return undefined
  const kind = (Object.keys(KINDS) as (keyof typeof KINDS)[]).find((each) => given[each] !== undefined)
  if (kind === 'echo' && given.line !== undefined) return ECHO_ON_LINE
  if (kind) return KINDS[kind]
  if (given.what === undefined && given.value === undefined) return undefined
  // A record of the plan can stand as it is: what it calls `at` is its time.
  return given.line === undefined ? AT_STATION : ON_LINE
})

/** Everything that is known of a circuit with a fault. */
export const EVIDENCE = listOf('The evidence', ITEM, { max: 500 })

export type Evidence = Held<typeof EVIDENCE>[number]
export type StationReading = Held<typeof AT_STATION>
export type LineReading = Held<typeof ON_LINE>
export type MeterReading = StationReading | LineReading
export type Bridge = Held<typeof MURRAY> | Held<typeof VARLEY>
export type Answer = Held<typeof RINGS> | Held<typeof HEARS>
export type Crank = Held<typeof CRANK>
export type Echo = Held<typeof ECHO_AT_STATION> | Held<typeof ECHO_ON_LINE>
export type Stray = Held<typeof STRAY>
/** What is known once each record is taken for what it says. */
export type Known = Exclude<Evidence, Held<typeof RECORD>>

export const isReading = (evidence: Known): evidence is MeterReading => 'what' in evidence
