import type { CatalogEntries } from '../catalog/catalog'
import { ENTRY_SCHEMAS } from '../catalog/entry-schemas'
import { exactEntries, plainName } from '../schema/exact-members'
import { part, usually } from '../schema/kept'
import { inOrder, partOf } from '../schema/parts'
import type { Config, Dataset } from '../schema/plain-values'
import { isObject, listOf, type Members, type Schema } from '../schema/schema'
import { asFileHolds } from './as-file-holds'

type EntryKind = keyof CatalogEntries

/** What a file may leave unsaid of an entry. */
const UNSAID: Readonly<Record<EntryKind, Members>> = { wires: { spoolsM: [] }, sets: {}, supplies: {} }

/** An entry with what the file leaves unsaid. */
function said(kind: EntryKind, value: unknown): unknown {
  if (!isObject(value)) return value
  const { id } = value
  const name = typeof id === 'string' ? id : ''
  // A board sends no direct current, and need not say so.
  const noCurrent = value.kind === 'board' ? { volts: 0, ohms: 0 } : {}
  const unsaid: Members = { name, source: 'not stated', ...noCurrent, ...UNSAID[kind] }
  const missing = Object.keys(unsaid).filter((each) => value[each] === undefined)
  return { ...value, ...Object.fromEntries(missing.map((each) => [each, unsaid[each]])) }
}

/** An entry whose unknown members are as they are to be kept. */
function exactEntry(schema: Schema, value: unknown): unknown {
  const { entries } = partOf(schema)
  if (!entries || !isObject(value)) return value
  return Object.fromEntries(
    exactEntries(value).map(([name, inner]) => {
      const known = entries[plainName(name)]
      return known ? [name, exactEntry(known, value[name])] : [name, inner]
    }),
  )
}

/** A list of entries as a plan's file has them: unknown members stay among their own. */
const entriesOf = <K extends EntryKind>(what: string, kind: K) => {
  const schema: Schema = ENTRY_SCHEMAS[kind]
  const entry = {
    ...schema,
    '~run': (dataset: { readonly value: unknown }, config: Config) =>
      schema['~run']({ value: said(kind, dataset.value) }, config) as Dataset,
    take: (value: unknown) => asFileHolds(said(kind, exactEntry(schema, value)) as object),
    give: (value: unknown) => inOrder(schema, value),
  }
  return usually(listOf(what, entry) as unknown as Schema<CatalogEntries[K]>, [])
}

/** The plan's own entries of the catalog. */
export const OWN_ENTRIES = part('The catalog', {
  wires: entriesOf('The list of wires', 'wires'),
  sets: entriesOf('The list of sets', 'sets'),
  supplies: entriesOf('The list of supplies', 'supplies'),
})
