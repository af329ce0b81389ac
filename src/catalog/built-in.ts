import figures from './built-in.json'
import type { CatalogEntries } from './catalog'

/**
 * What the program brings of its own, figures and spread without their sources; a plan's entries are laid over it.
 *
 * `built-in.json` is written from `sourced.ts` by `node scripts/list-figures.mjs`, and a test fails when it is out of date.
 */
export const BUILT_IN = figures as unknown as CatalogEntries
