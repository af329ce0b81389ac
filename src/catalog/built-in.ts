import figures from './built-in.json'
import type { CatalogEntries } from './catalog'
import type { Cell } from './cell'

/**
 * What the program brings of its own, figures and spread without their sources; a plan's entries are laid over it.
 *
 * `built-in.json` is written from `sourced.ts` by `node scripts/list-figures.mjs`, and a test fails when it is out of date.
 */
export const BUILT_IN = figures as unknown as CatalogEntries

/** Of every cell that the program knows what a load list needs; the rest is in `cells-….ts`. */
export const CELL_MASSES: readonly Pick<Cell, 'id' | 'name' | 'volts' | 'kg'>[] = figures.cells
