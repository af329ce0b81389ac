import type { CatalogEntries } from './catalog'
import { SETS } from './sets'
import { SUPPLIES } from './supplies'
import { WIRES } from './wires'

/** What the program brings of its own; a plan's entries are laid over it. */
export const BUILT_IN: CatalogEntries = { wires: WIRES, sets: SETS, supplies: SUPPLIES }
