import type { Evidence } from '../../fault/evidence'
import { lineTags } from '../../measure/line-tags'
import type { LineId } from '../../plan/id'
import { lineNumber, stationName } from '../../plan/plan'
import type { CircuitStudy } from '../../state/circuit-study'

/** One thing that a person knows of a faulty circuit, as far as it is filled in. */
export interface KnownLine {
  readonly key: number
  readonly kind: KnownKind
  /** A place's key: a station, or a tag. */
  readonly at: string
  readonly toward: string
  readonly isOk: boolean
  readonly first?: number | undefined
  readonly second?: number | undefined
}

interface Kind {
  readonly text: string
  /** What is typed, with its unit. */
  readonly figures: readonly string[]
  /** What did happen, and what did not, where it is a matter of yes or no. */
  readonly answers?: readonly [yes: string, no: string]
  readonly atTags?: true
}

/** What can be known, in the order in which a crew learns it. */
export const KNOWN_KINDS = {
  rings: { text: 'Who rings whom', figures: [], answers: ['rings', 'does not ring'] },
  hears: { text: 'Who hears whom', figures: [], answers: ['is heard', 'is not heard'] },
  crank: { text: 'How the crank turns', figures: [], answers: ['heavy', 'light'] },
  open: { text: 'Ohms, far end open', figures: ['Ohms read, Ω'], atTags: true },
  short: { text: 'Ohms, far end joined', figures: ['Ohms read, Ω'], atTags: true },
  kOhms: { text: 'Insulation, far end open', figures: ['Read, kΩ'], atTags: true },
  nanoF: { text: 'Capacitance, far end open', figures: ['Read, nF'], atTags: true },
  murray: { text: 'Murray bridge', figures: ['Arm at the faulty wire', 'Arm at the good wire'] },
  varley: { text: 'Varley bridge', figures: ['Rheostat, Ω', 'Loop read, Ω, if taken'] },
} as const satisfies Readonly<Record<string, Kind>>

export type KnownKind = keyof typeof KNOWN_KINDS

export const kindOf = (kind: KnownKind): Kind => KNOWN_KINDS[kind]

interface Option {
  readonly value: string
  readonly text: string
}

const TAG = 'tag '

/** Where a meter can stand: stations, and tags between them. */
export function placesOf({ plan, measured, model }: CircuitStudy, kind: KnownKind): readonly Option[] {
  const stations = model.stations.map((id) => ({ value: id, text: stationName(plan, id) }))
  if (!kindOf(kind).atTags) return stations
  const lines = [...new Set(model.lines.map(({ id }) => id as LineId))].filter((id) => plan.lines.has(id))
  const tags = lines.flatMap((id) =>
    lineTags(plan, measured.get(id)!, plan.lines.get(id)!)
      .slice(1, -1)
      .map(({ number }) => ({
        value: `${TAG}${number} ${id}`,
        text: `Tag ${lineNumber(plan, id)}/${number}`,
      })),
  )
  return [...stations, ...tags]
}

/** Where a meter there can look to. */
export function endsOf({ plan, model }: CircuitStudy, at: string): readonly Option[] {
  const tag = tagOf(at)
  if (!tag)
    return model.stations.flatMap((id) => (id === at ? [] : [{ value: id, text: stationName(plan, id) }]))
  const line = plan.lines.get(tag.line)
  if (!line) return []
  return [
    { value: 'from', text: stationName(plan, line.from) },
    { value: 'to', text: stationName(plan, line.to) },
  ]
}

function tagOf(at: string): { readonly number: number; readonly line: LineId } | null {
  const [, number, line] = /^tag (\d+) (.+)$/.exec(at) ?? []
  return line === undefined ? null : { number: Number(number), line: line as LineId }
}

/** What is known as the finder takes it; null while something is missing. */
export function evidenceOf({ plan, measured }: CircuitStudy, known: KnownLine): Evidence | null {
  const { kind, at, toward, isOk, first, second } = known
  switch (kind) {
    case 'rings':
      return { rings: [at, toward], ok: isOk }
    case 'hears':
      // Whoever is heard speaks: the other one hears.
      return { hears: [at, toward], ok: isOk }
    case 'crank':
      return { crank: isOk ? 'heavy' : 'light', at }
    case 'murray':
      return first === undefined || second === undefined || first + second <= 0
        ? null
        : { murray: [first, second], at, toward }
    case 'varley':
      return first === undefined
        ? null
        : { varley: first, at, toward, ...(second !== undefined && { loopOhms: second }) }
    default: {
      if (first === undefined) return null
      const read = {
        what: kind === 'kOhms' || kind === 'nanoF' ? kind : 'loopOhms',
        far: kind === 'short' ? 'short' : 'open',
        value: first,
      } as const
      const tag = tagOf(at)
      if (!tag) return { ...read, at, toward }
      const hung = lineTags(plan, measured.get(tag.line)!, plan.lines.get(tag.line)!)
      const place = hung.find(({ number }) => number === tag.number)
      return place
        ? { ...read, line: tag.line, wireM: place.wireM, toward: toward === 'from' ? 'from' : 'to' }
        : null
    }
  }
}
