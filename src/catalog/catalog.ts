import { remembering } from '../memo'
import type { Supply } from './supply'
import type { TelephoneSet } from './telephone-set'
import type { Wire } from './wire'

/** Lists of entries, as a plan file carries them and as the program brings them. */
export interface CatalogEntries {
  readonly wires: readonly Wire[]
  readonly sets: readonly TelephoneSet[]
  readonly supplies: readonly Supply[]
}

/** The same, ready to be looked up by id. */
export interface Catalog {
  readonly wires: ReadonlyMap<string, Wire>
  readonly sets: ReadonlyMap<string, TelephoneSet>
  readonly supplies: ReadonlyMap<string, Supply>
}

const byId = <T extends { readonly id: string }>(builtIn: readonly T[], own: readonly T[]) =>
  new Map([...builtIn, ...own].map((entry) => [entry.id, entry]))

/** The built-in entries with the plan's own laid over them: an own entry hides a built-in one of the same id. */
export const mergeCatalogs = remembering(
  (builtIn: CatalogEntries, own: CatalogEntries): Catalog => ({
    wires: byId(builtIn.wires, own.wires),
    sets: byId(builtIn.sets, own.sets),
    supplies: byId(builtIn.supplies, own.supplies),
  }),
)
