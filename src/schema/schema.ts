import * as v from 'valibot'
import { numberWords } from './limit'
import { type Config, type Dataset, judged, oneOf, wanting } from './plain-values'
import { give, type Turned, take, turnsOf } from './turned'

/** What a thing from outside may be: its members, their types and ranges, and the words that refuse what is not so. */
export type Schema<T = unknown> = v.GenericSchema<unknown, T>

export type Members = Readonly<Record<string, unknown>>

// biome-ignore lint/suspicious/noExplicitAny: a map of whatever
type AnyMap = ReadonlyMap<any, any>
type Plain = string | number | boolean | null | undefined | AnyMap
type Frozen<T> = unknown extends T ? T : T extends Plain ? T : { readonly [K in keyof T]: Frozen<T[K]> }

/** The type of what a schema lets through; nobody changes it. */
export type Held<S extends Schema> = Frozen<v.InferOutput<S>>

export const isObject = (value: unknown): value is Members =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Most faults that are told of one file: nobody reads more, and a hostile file has millions. */
export const MOST_FAULTS = 200

/** What the first schema lets pass, or the second where a look at the value asks for that. */
export function either<A extends Schema, B extends Schema>(
  first: A,
  second: B,
  isSecond: (value: unknown) => boolean = isObject,
) {
  const of = (value: unknown): Schema & Turned => (isSecond(value) ? second : first)
  const run = (dataset: v.UnknownDataset, config: Config) => of(dataset.value)['~run'](dataset, config)
  return {
    ...first,
    '~run': run,
    take: (value: unknown) => take(of(value), value),
    give: (value: unknown) => give(of(value), value),
  } as unknown as v.GenericSchema<Held<A> | Held<B>>
}

/** A member that may be left out. */
export const optional = <S extends Schema>(schema: S) => ({
  ...v.exactOptional(schema),
  ...turnsOf(schema),
})

type Issues = v.BaseIssue<unknown>[]

/** The faults that were found so far and those of one part more, with its name before their place. */
function withPart(
  found: Issues | undefined,
  whole: unknown,
  key: string | number,
  schema: Schema,
  value: unknown,
  config: Config,
): Issues | undefined {
  const { issues } = schema['~run']({ value }, config)
  if (!issues) return found
  const step = { type: 'unknown', origin: 'value', input: whole, key, value } as const
  const placed = issues.map(
    (issue): v.BaseIssue<unknown> => ({ ...issue, path: [step, ...(issue.path ?? [])] }),
  )
  return found ? [...found, ...placed] : placed
}

/** What the schema lets pass that a look at the value chooses; each is one of `kinds`. */
export function chosen<S extends Schema, K extends Schema>(
  otherwise: S,
  choose: (value: unknown) => K | undefined,
) {
  const of = (value: unknown): Schema => choose(value) ?? otherwise
  const run = (dataset: v.UnknownDataset, config: Config) => of(dataset.value)['~run'](dataset, config)
  return {
    ...otherwise,
    '~run': run,
    take: (value: unknown) => take(of(value), value),
    give: (value: unknown) => give(of(value), value),
  } as unknown as v.GenericSchema<Held<K>>
}

/**
 * An object that one of its members tells the kind of: the word there chooses what the object must be.
 *
 * @param kinds what each word asks for; several words may ask for the same
 */
export function byWord<const K extends Readonly<Record<string, Schema>>>(
  what: string,
  member: string,
  of: string,
  kinds: K,
) {
  const words = members(what, { [member]: oneOf(of, Object.keys(kinds)) })
  return chosen(words, (value): K[keyof K] | undefined => {
    const word = isObject(value) ? value[member] : undefined
    return typeof word === 'string' && Object.hasOwn(kinds, word) ? kinds[word as keyof K] : undefined
  })
}

const isEnough = (found: Issues | undefined) => found !== undefined && found.length > MOST_FAULTS

function looked(value: unknown, found: Issues | undefined): Dataset {
  if (!found) return { typed: true, value }
  const [first, ...others] = found
  return { typed: false, value, issues: [first!, ...others] }
}

/** A value with one fault more, told of one of its parts. */
export const faultyAt = (
  whole: unknown,
  key: number,
  schema: Schema,
  value: unknown,
  config: Config,
): Dataset => looked(whole, withPart(undefined, whole, key, schema, value, config))

const maybeAbsent = ({ type }: Schema) => type === 'exact_optional' || type === 'optional'

/** An object with these members; others may stand beside them, and stay. */
export function members<const E extends v.ObjectEntries>(what: string, entries: E) {
  const message = wanting('wrong-type', what, 'an object in braces')
  const other = v.custom(isObject, message)
  const schema = v.looseObject(entries, message)
  const each = Object.entries(entries).map(([name, inner]) => ({
    name,
    schema: inner as Schema,
    mayBeAbsent: maybeAbsent(inner as Schema),
  }))
  const run = (dataset: v.UnknownDataset, config: Config) => {
    const { value } = dataset
    if (!isObject(value)) return other['~run'](dataset, config)
    let found: Issues | undefined
    for (const { name, schema, mayBeAbsent } of each) {
      const member = value[name]
      if (member === undefined && mayBeAbsent) continue
      found = withPart(found, value, name, schema, member, config)
      if (isEnough(found)) break
    }
    return looked(value, found)
  }
  return { ...schema, '~run': run } as unknown as v.ObjectSchema<E, undefined>
}

const turnsOfList = (item: Schema & Turned): Turned => ({
  ...(item.take && { take: (list) => (list as readonly unknown[]).map((each) => item.take!(each)) }),
  ...(item.give && { give: (list) => (list as readonly unknown[]).map((each) => item.give!(each)) }),
})

/** A list, looked at only as far as there are faults to be told. */
export function listOf<S extends Schema>(
  what: string,
  item: S,
  { min = 0, max = Number.POSITIVE_INFINITY }: { readonly min?: number; readonly max?: number } = {},
) {
  const kind = wanting('wrong-type', what, 'a list in square brackets')
  const wanted = min === max ? `${min}` : undefined
  const count = judged<readonly unknown[]>((value) => {
    const { length } = value as readonly unknown[]
    if (length >= min && length <= max) return undefined
    const right = wanted ?? (length < min ? `at least ${min}` : `at most ${numberWords(max)}`)
    const message = `${what} has ${numberWords(length)} ${length === 1 ? 'entry' : 'entries'}: give ${right}.`
    return { code: 'wrong-count', message }
  })
  const other = v.custom(Array.isArray, kind)
  const run = (dataset: v.UnknownDataset, config: Config) => {
    const { value } = dataset
    if (!Array.isArray(value)) return other['~run'](dataset, config)
    const { length } = value
    const counted = length < min || length > max ? count['~run']({ value }, config).issues : undefined
    let found: Issues | undefined
    for (let i = 0; i < Math.min(length, max) && !isEnough(found); i++)
      found = withPart(found, value, i, item, value[i], config)
    return looked(value, counted ? [...counted, ...(found ?? [])] : found)
  }
  return { ...v.array(item, kind), ...turnsOfList(item), '~run': run } as unknown as v.GenericSchema<
    readonly Held<S>[]
  >
}

/** An object whose member names are ids: `key` looks at each name, `item` at what stands under it. */
export function recordOf<K extends Schema<string>, S extends Schema>(what: string, key: K, item: S) {
  const message = wanting('wrong-type', what, 'an object in braces')
  const other = v.custom(isObject, message)
  const run = (dataset: v.UnknownDataset, config: Config) => {
    const { value } = dataset
    if (!isObject(value)) return other['~run'](dataset, config)
    let found: Issues | undefined
    for (const name of Object.keys(value)) {
      found = withPart(found, value, name, key, name, config)
      found = withPart(found, value, name, item, value[name], config)
      if (isEnough(found)) break
    }
    return looked(value, found)
  }
  return { ...other, '~run': run } as unknown as v.GenericSchema<Readonly<Record<v.InferOutput<K>, Held<S>>>>
}
