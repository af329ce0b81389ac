import type { TestProject } from 'vitest/node'
import { builtSite } from '../../scripts/site.mjs'

declare module 'vitest' {
  interface ProvidedContext {
    /** Folder of the site that the browser's tests visit. */
    site: string
  }
}

/** Before the first of them. Where it cannot be built, only they fail: they find no page. */
export default async function buildSite(project: TestProject) {
  project.provide('site', await builtSite().catch(() => 'no site'))
}
