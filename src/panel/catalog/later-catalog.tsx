import { later } from '../later'

/** The catalog's figures and its editor come with a script of their own. */
export const CatalogEditor = later(async () => (await import('./catalog-editor')).CatalogEditor)
export const EntrySources = later(async () => (await import('./entry-sources')).EntrySources)
