import type { CatalogEntries } from './catalog'
import { SETS } from './sets'
import type { Sources } from './sources'
import { SUPPLIES } from './supplies'
import { WIRES } from './wires'

/** What the program brings of its own, with the source of every figure. It is long: the first screen does without, see `built-in.ts`. */
export const SOURCED: CatalogEntries = { wires: WIRES, sets: SETS, supplies: SUPPLIES }

const sourcesById: ReadonlyMap<string, Sources | undefined> = new Map(
  [...WIRES, ...SETS, ...SUPPLIES].map(({ id, sources }) => [id, sources]),
)

/** An entry with its sources: its own, or those of the built-in entry that it is. */
export function withSources<T extends { readonly id: string; readonly sources?: Sources }>(entry: T): T {
  const sources = entry.sources ?? sourcesById.get(entry.id)
  return sources ? { ...entry, sources } : entry
}
