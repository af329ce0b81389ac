import * as v from 'valibot'
import { unknownOf } from './exact-members'
import type { Limit } from './limit'
import { type Held, listOf, type Members, members, recordOf, type Schema } from './schema'
import { give, type Turned, take, turnsOf } from './turned'

/** Members that no schema names: kept as they came, and written back untouched. */
export type Unknown = Members

/** Besides its turning, what a member's schema says of a file that is silent about it, or of a figure that is not worth keeping. */
interface Silence extends Turned {
  readonly usual?: (owner: Members) => unknown
  readonly isSilent?: (value: unknown) => boolean
}

/** A member that a file may leave out; then it is as a file would say it with this, which may follow from the members beside it. */
export const usually = <S extends Schema>(schema: S, usual: unknown) =>
  ({
    ...v.optional(schema, undefined as never),
    ...turnsOf(schema),
    usual: typeof usual === 'function' ? usual : () => usual,
  }) as unknown as v.OptionalSchema<S, () => never> & Turned

type Without<T, U> = number extends U ? T : Exclude<T, U>

/** A member that is not kept where it says what holds without it. */
export const unless = <const U extends string | number | boolean, S extends Schema>(usual: U, schema: S) =>
  silentWhere(schema, (value) => value === usual) as unknown as v.ExactOptionalSchema<
    v.GenericSchema<unknown, Without<v.InferOutput<S>, U>>,
    undefined
  > & { readonly wrapped: S }

/** An object or a list that is not kept where it says nothing. */
export const unlessEmpty = <S extends Schema>(schema: S) =>
  silentWhere(schema, (value) => Object.keys(value as object).length === 0)

const silentWhere = <S extends Schema>(schema: S, isSilent: (value: unknown) => boolean) => ({
  ...v.exactOptional(schema),
  ...turnsOf(schema),
  isSilent,
})

type Entries = Readonly<Record<string, Schema>>

/**
 * Puts the members of an object from a file into another, those that it leaves out as they usually are, and gives the unknown ones.
 *
 * @param owner what those that are left out follow from
 * @param besides a member that is known, though no part of the thing
 */
export function takeMembers(
  taken: Record<string, unknown>,
  entries: Entries,
  value: Members,
  owner = value,
  besides?: string,
): Unknown | undefined {
  for (const name in entries) {
    const schema = entries[name] as Schema & Silence
    let given = value[name]
    if (given === undefined) given = schema.usual?.(owner)
    if (given === undefined) continue
    const inner = take(schema, given)
    if (!schema.isSilent?.(inner)) taken[name] = inner
  }
  return unknownOf(value, entries, besides)
}

/** The members of an object as a file has them: the known ones in the schema's order after those that are given, then the unknown ones. */
export function giveMembers(
  given: Record<string, unknown>,
  entries: Entries,
  value: object,
  unknown: Unknown | undefined,
): Members {
  for (const name in entries) {
    const inner = (value as Members)[name]
    if (inner !== undefined) given[name] = give(entries[name]!, inner)
  }
  return unknown ? { ...given, ...unknown } : given
}

/** An object with these members, in the order in which they are written; those that nobody knows are kept under `unknown`. */
export function part<const E extends v.ObjectEntries>(what: string, entries: E) {
  return {
    ...members(what, entries),
    take: (value: unknown) => {
      const taken: Record<string, unknown> = {}
      const unknown = takeMembers(taken, entries as Entries, value as Members)
      if (unknown) taken.unknown = unknown
      return taken
    },
    give: (value: unknown) =>
      giveMembers(
        {},
        entries as Entries,
        value as Members,
        (value as Members).unknown as Unknown | undefined,
      ),
  } as unknown as v.GenericSchema<
    unknown,
    v.InferOutput<v.ObjectSchema<E, undefined>> & { readonly unknown?: Unknown }
  > & { readonly entries: E } & Required<Turned>
}

/** Nothing at all, or what the schema lets through. */
export const orNull = <S extends Schema>(schema: S) =>
  ({
    ...schema,
    ...v.nullable(schema),
    take: (value: unknown) => (value === null ? null : take(schema, value)),
    give: (value: unknown) => (value === null ? null : give(schema, value)),
  }) as unknown as v.NullableSchema<S, undefined> & Required<Turned>

/** Two of a kind. */
export const twoOf = <S extends Schema>(what: string, item: S) =>
  listOf(what, item, { min: 2, max: 2 }) as unknown as v.GenericSchema<unknown, readonly [Held<S>, Held<S>]>

/** An object by ids in a file, a map in the program. */
export const mapOf = <K extends Schema<string>, S extends Schema>(what: string, key: K, item: S) =>
  ({
    ...recordOf(what, key, item),
    take: (value: unknown) => new Map(Object.entries(value as object)),
    give: (value: unknown) => Object.fromEntries(value as ReadonlyMap<string, unknown>),
  }) as unknown as v.GenericSchema<unknown, ReadonlyMap<v.InferOutput<K>, Held<S>>> & Required<Turned>

/** A list of things with ids in a file, a map by these in the program. */
export const listById = <S extends Schema<{ readonly id: string }>>(what: string, item: S) =>
  ({
    ...listOf(what, item),
    take: (value: unknown) =>
      new Map(
        (value as readonly unknown[]).map((each) => {
          const thing = take(item, each) as { readonly id: string }
          return [thing.id, thing]
        }),
      ),
    give: (value: unknown) =>
      [...(value as ReadonlyMap<string, unknown>).values()].map((each) => give(item, each)),
  }) as unknown as v.GenericSchema<unknown, ReadonlyMap<v.InferOutput<S>['id'], Held<S>>> & Required<Turned>

/** A value that a schema let through, as the program holds it. */
export const taken = <S extends Schema>(schema: S, value: unknown) => take(schema, value) as Held<S>

type LimitIn<S> = S extends { readonly limit: infer L }
  ? L
  : S extends { readonly wrapped: infer W }
    ? LimitIn<W>
    : never

/** The limits of those members that are figures, by their names. */
export const limitsOf = <E extends Entries>({ entries }: { readonly entries: E }) =>
  Object.fromEntries(
    Object.entries(entries).flatMap(([name, schema]) => {
      const { wrapped = schema } = schema as Schema & { readonly wrapped?: Schema }
      return 'limit' in wrapped ? [[name, wrapped.limit as Limit]] : []
    }),
  ) as unknown as { readonly [K in keyof E as LimitIn<E[K]> extends never ? never : K]: LimitIn<E[K]> }
