import type { Limit } from './limit'
import { isObject, type Schema } from './schema'

interface Inside {
  readonly type: string
  readonly wrapped?: Schema
  readonly entries?: Readonly<Record<string, Schema>>
  readonly limit?: Limit
}

/** What a form or a writer asks of a schema: whether it may be left out, its members, its limit. */
export function partOf(schema: Schema): Omit<Inside, 'type' | 'wrapped'> & { readonly optional: boolean } {
  const outer = schema as unknown as Inside
  const { entries, limit } = (outer.wrapped ?? outer) as unknown as Inside
  return {
    optional: outer.type === 'exact_optional',
    ...(entries && { entries }),
    ...(limit && { limit }),
  }
}

/** A value with its members in the schema's order, nested ones too; what the schema does not name follows as it came. */
export function inOrder(schema: Schema, value: unknown): unknown {
  const { entries } = partOf(schema)
  if (!entries || !isObject(value)) return value
  const known = Object.keys(entries).filter((name) => value[name] !== undefined)
  const others = Object.keys(value).filter((name) => !Object.hasOwn(entries, name))
  return Object.fromEntries([
    ...known.map((name) => [name, inOrder(entries[name]!, value[name])] as const),
    ...others.map((name) => [name, value[name]] as const),
  ])
}
