import { part, unless, usually } from '../schema/kept'
import { numberWords, valueWords } from '../schema/limit'
import { figure, idText, judged, oneOf, reference, text, truth } from '../schema/plain-values'
import { byWord, listOf, optional } from '../schema/schema'
import { POSITION } from './feature-schema'
import type { LineId } from './id'
import { LEG } from './line-schema'

// A member more of any of these is a line more: type, reading, faults and the order in a file follow.

/** `2026-11-25T10:12:00Z`: a day, or a day with the time of it. */
const ISO = /^\d{4}-\d{2}-\d{2}(T\d{2}:\d{2}(:\d{2}([.,]\d+)?)?(Z|[+-]\d{2}:?\d{2})?)?$/

const MOMENT = judged<string>((value) => {
  if (typeof value === 'string' && ISO.test(value) && !Number.isNaN(Date.parse(value))) return undefined
  const message = `The time is ${valueWords(value)}: give day and time, as in "2026-11-25T10:12:00Z".`
  return { code: typeof value === 'string' ? 'bad-time' : 'wrong-type', message }
})

/** Wire counted from the `from` end of its line, m. */
const wire = (what: string) => figure({ what, min: 0, max: 1e6, unit: 'm' })

/** What every record begins with: by its id a further record undoes it. */
const RECORDED = {
  id: idText('The id of the record'),
  /** When, and by whom. */
  at: optional(MOMENT),
  by: optional(text('The name of who did it')),
  line: reference<LineId>('The line', 'line'),
}

const STRETCH = part('The record', {
  ...RECORDED,
  kind: oneOf('The kind of record', ['laid', 'tested', 'recovered']),
  fromM: wire('The start of the stretch'),
  toM: wire('The end of the stretch'),
  /** The spool that it was laid from. */
  spool: optional(text('The spool')),
})

/** What a meter is, and what is done with the far end, for records and for evidence of a fault alike. */
export const METERED = {
  /** What lies at the other end of what the meter looks into: nothing, the two wires joined, or the telephone that is there. */
  far: oneOf('The far end', ['open', 'short', 'set']),
  what: oneOf('What was read', ['loopOhms', 'nanoF', 'kOhms', 'ringVolts', 'mA', 'lossDb']),
  value: figure({ what: 'The value', min: -200, max: 1e12, unit: '' }),
  /** Of a hundred readings of one thing 95 lie within this of it, %. */
  meterPct: optional(figure({ what: 'The error of the meter', min: 0, max: 100, unit: '%' })),
  tempC: optional(figure({ what: 'The temperature of the wire', min: -60, max: 90, unit: '°C' })),
  weather: optional(oneOf('The weather', ['dry', 'wet'])),
}

/** A value that no meter shows: only a loss can be less than none. */
export function valueFault({
  what,
  value,
}: {
  readonly what?: unknown
  readonly value?: unknown
}): string | undefined {
  return what !== 'lossDb' && typeof value === 'number' && value < 0
    ? `The value is ${numberWords(value)}: give what the meter read, 0 or more.`
    : undefined
}

const READING = part('The record', {
  ...RECORDED,
  kind: oneOf('The kind of record', ['reading']),
  /** Where the meter stood. */
  wireM: wire('The place of the meter'),
  toward: oneOf('The end that the meter looked to', ['from', 'to']),
  ...METERED,
  /** The line was cut since, between the meter and what it looked at: the reading is kept, and tells nothing any more. */
  stale: unless(false, truth('The mark "stale"')),
})

/** A place on the way of whoever carried the device: longitude, latitude, and, as far as they are known, elevation m, time, accuracy m. */
export type TrackPoint = readonly [
  lonDeg: number,
  latDeg: number,
  elevationM?: number | null,
  time?: string | null,
  accuracyM?: number | null,
]

const isFigure = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value)
const isMaybe = (value: unknown, is: (value: unknown) => boolean) => value == null || is(value)

const TRACK_POINT = judged<TrackPoint>((value) => {
  const list = Array.isArray(value) ? value : []
  const [lonDeg, latDeg, elevationM, time, accuracyM] = list
  const isPlace = isFigure(lonDeg) && isFigure(latDeg) && list.length <= 5
  const rest =
    isMaybe(elevationM, isFigure) &&
    isMaybe(time, (each) => typeof each === 'string') &&
    isMaybe(accuracyM, (each) => isFigure(each) && each >= 0)
  if (!isPlace || !rest) {
    const message = `The point of the track is ${valueWords(value)}: give [longitude, latitude, elevation in metres, "time", accuracy in metres].`
    return { code: 'wrong-type', message }
  }
  if (Math.abs(lonDeg) <= 180 && Math.abs(latDeg) <= 90) return undefined
  const message = `Longitude ${lonDeg}°, latitude ${latDeg}° is off the globe: give the longitude first, from −180 to 180, then the latitude, from −90 to 90.`
  return { code: 'off-globe', message }
})

const TRACK = part('The record', {
  ...RECORDED,
  kind: oneOf('The kind of record', ['track']),
  points: listOf('The list of points', TRACK_POINT, { max: 200_000 }),
})

const PICTURE = judged<string>((value) => {
  if (typeof value === 'string' && value.startsWith('data:image/')) return undefined
  const message = `The picture is ${valueWords(value)}: give it as "data:image/…".`
  return { code: 'wrong-type', message }
})

const REMARK = part('The record', {
  ...RECORDED,
  kind: oneOf('The kind of record', ['fault', 'mended', 'note']),
  wireM: optional(wire('The place on the wire')),
  text: usually(text('The text'), ''),
  /** A small picture, as a `data:` address. */
  photo: optional(PICTURE),
})

const isWirePair = (value: unknown): value is readonly [number, number] =>
  Array.isArray(value) && value.length === 2 && value.every((each) => isFigure(each) && each >= 0)

const WIRE_PAIR = judged<readonly [beforeM: number, nowM: number]>((value) =>
  isWirePair(value)
    ? undefined
    : {
        code: 'wrong-type',
        message: `The pair is ${valueWords(value)}: give [metres of wire before, metres of wire now].`,
      },
)

/** From here on the line is led the way that it was really laid. */
const AS_LAID = part('The record', {
  ...RECORDED,
  kind: oneOf('The kind of record', ['as-laid']),
  /** How it was led before. */
  planned: optional(
    part('The way before', {
      bends: listOf('The list of bends', POSITION),
      legs: listOf('The list of legs', LEG),
    }),
  ),
  /** Where what was recorded before lies on the new way: metres of wire before, and now, growing. */
  wire: optional(listOf('The list of places', WIRE_PAIR)),
})

const UNDONE = part('The record', {
  ...RECORDED,
  kind: oneOf('The kind of record', ['undone']),
  /** The record that no longer counts. */
  record: reference('The record that is undone', 'record'),
})

/** One thing that was done, read or seen on a line. Records are added, never changed; one that was a slip is undone by a further one. */
export const RECORD = byWord('The record', 'kind', 'The kind of record', {
  laid: STRETCH,
  tested: STRETCH,
  recovered: STRETCH,
  reading: READING,
  track: TRACK,
  fault: REMARK,
  mended: REMARK,
  note: REMARK,
  'as-laid': AS_LAID,
  undone: UNDONE,
})

export const FIELD = listOf('The list of records', RECORD)
