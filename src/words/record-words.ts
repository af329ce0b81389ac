import type { StandingRecord } from '../plan/standing-records'
import { readingWords } from './field-words'
import type { Tongue } from './tongue'

type Kind = StandingRecord['kind']

/** What a record is, as a heading of a list has it. */
export const RECORD_NAMES: Readonly<Record<Kind, string>> = {
  laid: 'Laid',
  tested: 'Tested',
  recovered: 'Taken up',
  reading: 'Read',
  track: 'Walked track',
  fault: 'Fault',
  mended: 'Mended',
  note: 'Note',
  'as-laid': 'Led as it was laid',
}

const FAR = { open: 'far end open', short: 'far end joined', set: 'with what is at the far end' } as const

type Of<K extends Kind> = Extract<StandingRecord, { readonly kind: K }>

const stretch = ({ kind, fromM, toM, spool }: Of<'laid' | 'tested' | 'recovered'>, { length }: Tongue) =>
  `${RECORD_NAMES[kind]} ${length(fromM)} to ${length(toM)}${spool ? `, from spool ${spool}` : ''}`

const remark = ({ kind, wireM, text }: Of<'fault' | 'mended' | 'note'>, { length }: Tongue) =>
  `${RECORD_NAMES[kind]}${wireM === undefined ? '' : ` at ${length(wireM)}`}${text ? `: ${text}` : ''}`

const SAY: { readonly [K in Kind]: (record: Of<K>, say: Tongue) => string } = {
  laid: stretch,
  tested: stretch,
  recovered: stretch,
  reading: ({ what, value, wireM, far, toward, line, stale }, { length, name }) =>
    `Read ${readingWords(what, value)} at ${length(wireM)} of wire of ${name(line)}, looking ${toward === 'from' ? 'back' : 'ahead'}, ${FAR[far]}${stale ? '; the line was cut since' : ''}`,
  track: ({ points }) => `Walked track of ${points.length} places${minutesOf(points)}`,
  fault: remark,
  mended: remark,
  note: remark,
  'as-laid': () => 'Led the way that it was really laid',
}

function minutesOf(points: Of<'track'>['points']): string {
  const [first, last] = [points[0]?.[3], points.at(-1)?.[3]]
  const minutes = first && last ? (Date.parse(last) - Date.parse(first)) / 60_000 : 0
  return minutes >= 1 ? ` in ${minutes.toFixed(0)} min` : ''
}

/** One record in a sentence without its end: `Laid 0 m to 812 m, from spool s1`. Metres are of wire, from the line's start. */
export const recordWords = (record: StandingRecord, say: Tongue): string =>
  (SAY[record.kind] as (record: StandingRecord, say: Tongue) => string)(record, say)
