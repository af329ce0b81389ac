import * as v from 'valibot'
import { type Limit, limitFault, numberWords, valueWords } from './limit'

/** What a thing from outside may be: its members, their types and ranges, and the words that refuse what is not so. */
export type Schema<T = unknown> = v.GenericSchema<unknown, T>

export type Members = Readonly<Record<string, unknown>>

type Plain = string | number | boolean | null | undefined
type Frozen<T> = T extends Plain ? T : { readonly [K in keyof T]: Frozen<T[K]> }

/** The type of what a schema lets through; nobody changes it. */
export type Held<S extends Schema> = Frozen<v.InferOutput<S>>

export const isObject = (value: unknown): value is Members =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Most faults that are told of one file: nobody reads more, and a hostile file has millions. */
export const MOST_FAULTS = 200

/** The code of a fault and its sentence, in the one text that a schema's message can be. */
const saying =
  (code: string, sentence: (value: unknown) => string) =>
  ({ input }: { readonly input: unknown }): string =>
    `${input === undefined ? 'missing' : code} ${sentence(input)}`

const wanting = (code: string, what: string, wanted: string) =>
  saying(code, (value) => `${what} is ${valueWords(value)}: give ${wanted}.`)

type Dataset = v.OutputDataset<unknown, v.BaseIssue<unknown>>
type Config = v.Config<v.BaseIssue<unknown>>

/** A value that passes a check of its own, which gives a code and a sentence where it does not. */
export const judged = <T>(
  faultOf: (value: unknown) => { readonly code: string; readonly message: string } | undefined,
) =>
  v.custom<T>(
    (value) => faultOf(value) === undefined,
    ({ input }) => saying(faultOf(input)!.code, (value) => faultOf(value)!.message)({ input }),
  )

/** A number within its limit, which stays with the schema for forms to ask by. */
export const figure = <L extends Limit>(limit: L) => ({
  ...judged<number>((value) => {
    const message = limitFault(limit, value)
    return message === undefined ? undefined : { code: 'out-of-range', message }
  }),
  limit,
})

export const text = (what: string) => v.string(wanting('wrong-type', what, 'a text in quotes'))

/** A text that things are told apart by. */
export const idText = (what: string) => {
  const message = wanting('wrong-type', what, 'a text in quotes that is not empty')
  return v.pipe(v.string(message), v.nonEmpty(message))
}

export const oneOf = <const W extends readonly string[]>(what: string, words: W) =>
  v.picklist(words, wanting('unknown-word', what, words.map((word) => JSON.stringify(word)).join(' or ')))

/** A mark that stands or is left out. */
export const mark = (what: string) => v.literal(true, wanting('wrong-type', what, 'true, or leave it out'))

/** What one schema lets pass, or the other; the faults told are the second's where the value is an object. */
export function either<A extends Schema, B extends Schema>(plain: A, object: B) {
  const run = (dataset: v.UnknownDataset, config: Config) =>
    (isObject(dataset.value) ? object : plain)['~run'](dataset, config)
  return { ...plain, '~run': run } as unknown as v.GenericSchema<Held<A> | Held<B>>
}

/** A member that may be left out. */
export const optional = <S extends Schema>(schema: S) => v.exactOptional(schema)

/** What is left of a look at many parts: their faults, each with the part's name before its place. */
function lookAt(
  value: unknown,
  config: Config,
  parts: Iterable<readonly [name: string | number, value: unknown, schema: Schema]>,
): Dataset {
  const issues: v.BaseIssue<unknown>[] = []
  for (const [key, part, schema] of parts) {
    for (const issue of schema['~run']({ value: part }, config).issues ?? []) {
      const step = { type: 'unknown', origin: 'value', input: value, key, value: part } as const
      issues.push({ ...issue, path: [step, ...(issue.path ?? [])] })
    }
    if (issues.length > MOST_FAULTS) break
  }
  const [first, ...others] = issues
  return first ? { typed: false, value, issues: [first, ...others] } : { typed: true, value }
}

/** An object with these members; others may stand beside them, and stay. */
export function members<const E extends v.ObjectEntries>(what: string, entries: E) {
  const message = wanting('wrong-type', what, 'an object in braces')
  const other = v.custom(isObject, message)
  const schema = v.looseObject(entries, message)
  const each = Object.entries(entries) as [string, Schema][]
  function* parts(value: Members) {
    for (const [name, inner] of each) {
      const absent = value[name] === undefined && inner.type === 'exact_optional'
      if (!absent) yield [name, value[name], inner] as const
    }
  }
  const run = (dataset: v.UnknownDataset, config: Config) => {
    const { value } = dataset
    if (!isObject(value)) return other['~run'](dataset, config)
    return lookAt(value, config, parts(value))
  }
  return { ...schema, '~run': run } as unknown as v.ObjectSchema<E, undefined>
}

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
  function* parts(value: readonly unknown[]) {
    for (let i = 0; i < Math.min(value.length, max); i++) yield [i, value[i], item] as const
  }
  const run = (dataset: v.UnknownDataset, config: Config) => {
    const { value } = dataset
    if (!Array.isArray(value)) return other['~run'](dataset, config)
    const { issues: counted } = count['~run']({ value }, config)
    const seen = lookAt(value, config, parts(value))
    const issues = [...(counted ?? []), ...(seen.issues ?? [])]
    return issues.length > 0 ? { typed: false, value, issues } : seen
  }
  return { ...v.array(item, kind), '~run': run } as unknown as v.GenericSchema<readonly Held<S>[]>
}

/** An object whose member names are ids: `key` looks at each name, `item` at what stands under it. */
export function recordOf<S extends Schema>(what: string, key: Schema, item: S) {
  const message = wanting('wrong-type', what, 'an object in braces')
  const other = v.custom(isObject, message)
  function* parts(value: Members) {
    for (const name of Object.keys(value)) {
      yield [name, name, key] as const
      yield [name, value[name], item] as const
    }
  }
  const run = (dataset: v.UnknownDataset, config: Config) => {
    const { value } = dataset
    return isObject(value) ? lookAt(value, config, parts(value)) : other['~run'](dataset, config)
  }
  return { ...other, '~run': run } as unknown as v.GenericSchema<Readonly<Record<string, Held<S>>>>
}
