import * as v from 'valibot'
import { type Limit, limitFault, valueWords } from './limit'

/** The code of a fault and its sentence, in the one text that a schema's message can be. */
const saying =
  (code: string, sentence: (value: unknown) => string) =>
  ({ input }: { readonly input: unknown }): string =>
    `${input === undefined ? 'missing' : code} ${sentence(input)}`

/** The same where the fault is what stands there. */
export const wanting = (code: string, what: string, wanted: string) =>
  saying(code, (value) => `${what} is ${valueWords(value)}: give ${wanted}.`)

export type Dataset = v.OutputDataset<unknown, v.BaseIssue<unknown>>
export type Config = v.Config<v.BaseIssue<unknown>>

/** Ids that a reference may name, by the word for what they are of; a reference to what is not listed here is not looked up. */
export type KnownIds<Thing extends string = string> = {
  readonly [T in Thing]?: ReadonlySet<unknown> | undefined
}

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
  // Adding 0 turns −0, which a file cannot hold, into 0.
  take: (value: unknown) => (value as number) + 0,
})

export const text = (what: string) => v.string(wanting('wrong-type', what, 'a text in quotes'))

/** A text that things are told apart by. */
export const idText = (what: string) => {
  const message = wanting('wrong-type', what, 'a text in quotes that is not empty')
  return v.pipe(v.string(message), v.nonEmpty(message))
}

export const oneOf = <const W extends readonly string[]>(what: string, words: W) =>
  v.picklist(words, wanting('unknown-word', what, words.map((word) => JSON.stringify(word)).join(' or ')))

export const truth = (what: string) => v.boolean(wanting('wrong-type', what, 'true or false'))

/** A mark that stands or is left out. */
export const mark = (what: string) => v.literal(true, wanting('wrong-type', what, 'true, or leave it out'))

/** A text that names a thing that there is. */
export function reference<Id extends string = string>(what: string, thing: string) {
  const other = v.custom<Id>(
    () => false,
    saying(`unknown-${thing}`, (value) => `${what} is ${valueWords(value)}: give the id of a ${thing}.`),
  )
  const unheard = v.custom<Id>(
    () => false,
    saying(
      `unknown-${thing}`,
      (value) =>
        `${what} is ${valueWords(value)}, and there is no such ${thing}: name one that there is, or add it.`,
    ),
  )
  const run = (dataset: v.UnknownDataset, config: Config & { readonly known?: KnownIds }): Dataset => {
    if (typeof dataset.value !== 'string') return other['~run'](dataset, config)
    const ids = config.known?.[thing]
    if (ids && !ids.has(dataset.value)) return unheard['~run'](dataset, config)
    return { typed: true, value: dataset.value }
  }
  return { ...other, '~run': run } as unknown as v.GenericSchema<Id>
}
