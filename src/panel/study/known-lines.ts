import type { Evidence } from '../../fault/evidence'
import { lineTags } from '../../measure/line-tags'
import type { LineId } from '../../plan/id'
import { lineNumber, stationName } from '../../plan/plan'
import { standingRecords } from '../../plan/standing-records'
import type { CircuitStudy } from '../../state/circuit-study'
import { recordWords } from '../../words/record-words'
import type { Tongue } from '../../words/tongue'
import { type KnownKind, kindOf } from './known-kinds'

/** One thing that a person knows of a faulty circuit, as far as it is filled in. */
export interface KnownLine {
  readonly key: number
  readonly kind: KnownKind
  /** A place's key: a station, or a tag; of what was read on the walk the record. */
  readonly at: string
  readonly toward: string
  readonly said: string
  readonly first?: number | undefined
  readonly second?: number | undefined
}

/** How everything was measured, as far as it is said. */
export interface Measuring {
  readonly meterPct?: number | undefined
  readonly tempC?: number | undefined
  readonly weather?: 'dry' | 'wet' | undefined
}

interface Option {
  readonly value: string
  readonly text: string
}

const TAG = 'tag '

const linesOf = ({ plan, model }: CircuitStudy): readonly LineId[] =>
  [...new Set(model.lines.map(({ id }) => id as LineId))].filter((id) => plan.lines.has(id))

const tagsOf = ({ plan, measured }: CircuitStudy, id: LineId) =>
  lineTags(plan, measured.get(id)!, plan.lines.get(id)!)

const tagOption = ({ plan }: CircuitStudy, id: LineId, number: number): Option => ({
  value: `${TAG}${number} ${id}`,
  text: `Tag ${lineNumber(plan, id)}/${number}`,
})

/** Where a meter can stand: stations, and tags between them; ends of stretches are tags, and of records there are those of the lines. */
export function placesOf(study: CircuitStudy, kind: KnownKind, say: Tongue): readonly Option[] {
  const { plan, model } = study
  const { where } = kindOf(kind)
  if (where === 'record') {
    const lines = new Set(linesOf(study))
    return standingRecords(plan).flatMap((record) =>
      lines.has(record.line) && (record.kind === 'tested' || (record.kind === 'reading' && !record.stale))
        ? [{ value: record.id, text: recordWords(record, say) }]
        : [],
    )
  }
  if (where === 'stretch')
    return linesOf(study).flatMap((id) =>
      tagsOf(study, id)
        .slice(0, -1)
        .map(({ number }) => tagOption(study, id, number)),
    )
  const stations = model.stations.map((id) => ({ value: id, text: stationName(plan, id) }))
  if (where !== 'meter-at-tags') return stations
  const tags = linesOf(study).flatMap((id) =>
    tagsOf(study, id)
      .slice(1, -1)
      .map(({ number }) => tagOption(study, id, number)),
  )
  return [...stations, ...tags]
}

/** Where a meter there can look to, or where a stretch that begins there can end. */
export function endsOf(study: CircuitStudy, kind: KnownKind, at: string): readonly Option[] {
  const { plan, model } = study
  const { where } = kindOf(kind)
  if (where === 'alone' || where === 'record') return []
  const tag = tagOf(at)
  if (!tag)
    return model.stations.flatMap((id) => (id === at ? [] : [{ value: id, text: stationName(plan, id) }]))
  const line = plan.lines.get(tag.line)
  if (!line) return []
  if (where === 'stretch')
    return tagsOf(study, line.id)
      .filter(({ number }) => number > tag.number)
      .map(({ number }) => tagOption(study, line.id, number))
  return [
    { value: 'from', text: stationName(plan, line.from) },
    { value: 'to', text: stationName(plan, line.to) },
  ]
}

function tagOf(at: string): { readonly number: number; readonly line: LineId } | null {
  const [, number, line] = /^tag (\d+) (.+)$/.exec(at) ?? []
  return line === undefined ? null : { number: Number(number), line: line as LineId }
}

/** A tag as a place on its line; null where it is gone. */
function wireAt(study: CircuitStudy, at: string): { readonly line: LineId; readonly wireM: number } | null {
  const tag = tagOf(at)
  if (!tag || !study.plan.lines.has(tag.line)) return null
  const wireM = tagsOf(study, tag.line).find(({ number }) => number === tag.number)?.wireM
  return wireM === undefined ? null : { line: tag.line, wireM }
}

/** What is known as the finder takes it; null while something is missing. */
export function evidenceOf(study: CircuitStudy, known: KnownLine, by: Measuring): Evidence | null {
  const { kind, at, toward, said, first, second } = known
  const meter = {
    ...(by.meterPct !== undefined && { meterPct: by.meterPct }),
    ...(by.weather && { weather: by.weather }),
  }
  const metered = { ...meter, ...(by.tempC !== undefined && { tempC: by.tempC }) }
  switch (kind) {
    case 'rings':
      return { rings: [at, toward], ok: said === 'yes' }
    case 'hears':
      // Whoever is heard speaks: the other one hears.
      return { hears: [at, toward], ok: said === 'yes' }
    case 'crank':
      return { crank: said as 'heavy' | 'light' | 'as-ever', at }
    case 'stray':
      return { stray: said as 'rings' | 'heard' | 'none', at }
    case 'record':
      return at === '' ? null : { record: at }
    case 'sound': {
      const [from, to] = [wireAt(study, at), wireAt(study, toward)]
      return from && to ? { sound: { line: from.line, fromM: from.wireM, toM: to.wireM } } : null
    }
    case 'murray':
      return first === undefined || second === undefined || first + second <= 0
        ? null
        : { murray: [first, second], at, toward, ...metered }
    case 'varley':
      return first === undefined
        ? null
        : { varley: first, at, toward, ...metered, ...(second !== undefined && { loopOhms: second }) }
  }
  if (first === undefined) return null
  const place = wireAt(study, at)
  const end = toward === 'from' ? ('from' as const) : ('to' as const)
  if (kind === 'echo') {
    const echo = { ns: first, ...(said !== '' && { swing: said as 'up' | 'down' }) }
    return place ? { echo, ...place, toward: end, ...meter } : { echo, at, toward, ...meter }
  }
  const read = {
    ...(kind === 'open' || kind === 'short'
      ? ({ what: 'loopOhms', far: kind } as const)
      : ({ what: kind === 'nanoF' ? 'nanoF' : 'kOhms', far: 'open' } as const)),
    ...(kind === 'earthA' && { wire: 'a' as const }),
    ...(kind === 'earthB' && { wire: 'b' as const }),
    value: first,
    ...metered,
  }
  return place ? { ...read, ...place, toward: end } : { ...read, at, toward }
}
