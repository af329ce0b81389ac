import { ENTRY_SCHEMAS } from '../catalog/entry-schemas'
import { CIRCUIT } from '../plan/circuit-schema'
import { POSITION } from '../plan/feature-schema'
import { RECORD, valueFault } from '../plan/field-schema'
import { HAZARD_GEOMETRY, HAZARD_MEMBERS } from '../plan/hazard-schema'
import { ELECTRODE, LEG, LINE_MEMBERS } from '../plan/line-schema'
import { ALLOWANCES, PAPERS, SETTINGS, SLACK, STOCK } from '../plan/settings-schema'
import { STATION_MEMBERS } from '../plan/station-schema'
import { WORK_MEMBERS } from '../plan/work'
import { faultsOf } from '../schema/faults'
import { part } from '../schema/kept'
import { valueWords } from '../schema/limit'
import { text } from '../schema/plain-values'
import { isObject, listOf, type Schema } from '../schema/schema'
import { type Edit, LATEST_MS } from './edit'
import { type Place, placeOf } from './keys'
import { shownValue } from './members'
import { KINDS } from './things'

type Schemas = Readonly<Record<string, Schema>>

/** A value may have so many letters as JSON, and so many things within things. */
const MOST_LETTERS = 4_000_000
const DEEPEST = 64
/** A step may have so many edits: more than a plan of ten thousand stations has registers. */
const MOST_IN_STEP = 200_000

const ROUTE = part('The route', {
  bends: listOf('The list of bends', POSITION),
  legs: listOf('The list of legs', LEG),
})
const WAY = part('The return', {
  return: LINE_MEMBERS.entries.return,
  electrodeOhms: LINE_MEMBERS.entries.electrodeOhms,
})
const { circuits: _, stock: __, field: ___, catalog: ____, ...PLAIN_SETTINGS } = SETTINGS.entries

/** What each register of a kind may hold, by the first name of its member and by the whole of it. */
const HELD: Readonly<Record<string, Schemas>> = {
  plan: {
    ...(PLAIN_SETTINGS as Schemas),
    ...under('allowances', ALLOWANCES.entries as Schemas),
    ...under('allowances/slackPct', SLACK.entries as Schemas),
    ...under('work', WORK_MEMBERS.entries as unknown as Schemas),
    ...under('papers', PAPERS.entries as Schemas),
  },
  wires: ENTRY_SCHEMAS.wires.entries as Schemas,
  sets: ENTRY_SCHEMAS.sets.entries as Schemas,
  supplies: ENTRY_SCHEMAS.supplies.entries as Schemas,
  stock: STOCK.entries as Schemas,
  stations: { ...(STATION_MEMBERS.entries as Schemas), position: POSITION },
  lines: { ...(LINE_MEMBERS.entries as Schemas), route: ROUTE, way: WAY },
  hazards: { ...(HAZARD_MEMBERS.entries as Schemas), geometry: HAZARD_GEOMETRY },
  circuits: CIRCUIT.entries as Schemas,
}

function under(name: string, schemas: Schemas): Schemas {
  return Object.fromEntries(Object.entries(schemas).map(([inner, schema]) => [`${name}/${inner}`, schema]))
}

/** Why an edit can't be one of this plan, in a sentence; undefined for one that can. Says nothing about what other edits make of it. */
export function editFault(edit: Edit): string | undefined {
  const { hand, number, at, key, value, over, was, left = 0 } = edit
  const isCounted =
    [number - 1, left].every((each) => Number.isSafeInteger(each) && each >= 0) && left <= MOST_IN_STEP
  const isDated = Number.isSafeInteger(at) && at > 0 && at <= LATEST_MS
  const place = typeof key === 'string' && key.length < 2000 ? placeOf(key) : undefined
  const isNamed = typeof hand === 'string' && /^[\w.-]{1,80}$/.test(hand)
  const isOver =
    Array.isArray(over) && over.every((id) => typeof id === 'string' && /^[\w.-]{1,80}:\d{1,15}$/.test(id))
  if (!isNamed || !isCounted || !isDated || !isOver || !place || !Object.hasOwn(KINDS, place.kind))
    return 'An edit came in that is none.'
  if (value === null ? false : isTooMuch(value) || isTooMuch(was)) return 'An edit came in that is too large.'
  const fault = valueFaultAt(place, value)
  return fault && `An edit of ${valueWords(key)} came in that cannot be: ${fault}`
}

function isTooMuch(value: unknown): boolean {
  if (value === undefined) return false
  if (typeof value !== 'object') return String(value).length > MOST_LETTERS
  return isTooDeep(value, DEEPEST) || JSON.stringify(value).length > MOST_LETTERS
}

const isTooDeep = (value: unknown, left: number): boolean =>
  typeof value === 'object' &&
  value !== null &&
  (left === 0 || Object.values(value).some((inner) => isTooDeep(inner, left - 1)))

const NOT_HELD = 'there is no such thing in a plan.'

function valueFaultAt({ kind, id, member }: Place, value: unknown): string | undefined {
  if (kind === 'plan' ? id !== '' || member === '' : id === '') return NOT_HELD
  if (value === undefined) return undefined
  if (member === '') return isFigure(value) ? undefined : 'its rank is no number.'
  if (kind === 'features') return member === 'feature' ? foreignFault(value) : NOT_HELD
  if (kind === 'field') return member === 'record' ? recordFault(id, value) : NOT_HELD
  if (member === 'unknown') return unknownFault(kind, value)
  const first = member.split('/', 1)[0]!
  if (kind === 'plan' && first.startsWith('unknown-')) return unknownOfPlanFault(first, member, value)
  if (kind === 'circuits' && /^(lines|sets|electrodeOhms)\//.test(member))
    return inCircuitFault(first, member, value)
  if (kind === 'circuits' && first === 'electrodeOhms') return value === true ? undefined : NOT_HELD
  const schemas = HELD[kind]!
  if (member === 'id' || !Object.hasOwn(schemas, member)) return NOT_HELD
  return firstFault(schemas[member]!, value) ?? routeFault(kind, member, value)
}

const isFigure = (value: unknown): value is number => Number.isFinite(value)
const firstFault = (schema: Schema, value: unknown): string | undefined =>
  faultsOf(schema, value, '')[0]?.message

function routeFault(kind: string, member: string, value: unknown): string | undefined {
  if (kind !== 'lines') return undefined
  const { bends, legs, return: way, electrodeOhms } = value as Record<string, readonly unknown[] | undefined>
  if (member === 'route' && legs!.length !== bends!.length + 1)
    return 'a route has one leg more than it has bends.'
  const isEarth = (way as unknown) === 'earth'
  return member === 'way' && isEarth && !electrodeOhms ? 'an earth return has two electrodes.' : undefined
}

function recordFault(id: string, value: unknown): string | undefined {
  const fault = firstFault(RECORD, value)
  if (fault) return fault
  const record = value as Record<string, unknown>
  const { fromM, toM } = record as Record<string, number>
  if (record.id !== id) return 'the record has another id.'
  return fromM! > toM! ? 'the stretch ends before it begins.' : valueFault(record)
}

/** A feature of another program's: what this one would read as a thing of its own is none. */
function foreignFault(value: unknown): string | undefined {
  const kind = isObject(value) && isObject(value.properties) ? value.properties.kind : undefined
  const isForeign =
    isObject(value) && value.type === 'Feature' && !['station', 'line', 'hazard'].includes(kind as string)
  return isForeign ? undefined : NOT_HELD
}

function inCircuitFault(name: string, member: string, value: unknown): string | undefined {
  const inner = shownValue(member, value)
  if (!Array.isArray(value) || value.length !== 2 || !isFigure(value[0])) return 'its rank is no number.'
  if (name === 'lines') return inner === true ? undefined : NOT_HELD
  return firstFault(name === 'sets' ? text('The set') : ELECTRODE, inner)
}

/** Members that no schema names must not stand in the place of those that one does. */
function unknownFault(kind: string, value: unknown): string | undefined {
  if (!isObject(value)) return NOT_HELD
  const known = HELD[kind] ?? {}
  const isFeature = ['stations', 'lines', 'hazards'].includes(kind)
  const parts = isFeature
    ? [
        [value.feature, ['type', 'id', 'properties', 'geometry']],
        [value.properties, [...Object.keys(known), 'kind']],
        [value.geometry, ['type', 'coordinates']],
      ]
    : [[value, [...Object.keys(known), 'id']]]
  const clashes = (parts as [unknown, readonly string[]][]).some(
    ([inner, names]) =>
      inner !== undefined && (!isObject(inner) || names.some((name) => Object.hasOwn(inner, name))),
  )
  return clashes ? NOT_HELD : undefined
}

const TAKEN: Readonly<Record<string, readonly string[]>> = {
  'unknown-file': ['type', 'plan', 'features'],
  'unknown-plan': ['format', 'version', ...Object.keys(SETTINGS.entries)],
  'unknown-catalog': ['wires', 'sets', 'supplies'],
}

function unknownOfPlanFault(name: string, member: string, value: unknown): string | undefined {
  const isRanked = Array.isArray(value) && value.length === 2 && isFigure(value[0])
  const isTaken = TAKEN[name]?.some((each) => member === `${name}/${each}`) ?? true
  return isRanked && !isTaken ? undefined : NOT_HELD
}
