import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { TestProject } from 'vitest/node'

declare module 'vitest' {
  interface ProvidedContext {
    /** Folder of the site that the browser's tests visit. */
    site: string
  }
}

/** Before the first of them. In a process of its own, since under a test runner a build is not the one that people get. */
export default function buildSite(project: TestProject) {
  const site = mkdtempSync(join(tmpdir(), 'fieldpair-site-'))
  project.provide('site', site)
  const args = ['scripts/build.mjs', '--out', site]
  try {
    execFileSync(process.execPath, args, {
      env: { ...process.env, NODE_ENV: 'production' },
      stdio: 'inherit',
    })
  } catch {
    // Only the browser's tests fail then: they find no page.
  }
  return () => rmSync(site, { recursive: true, force: true })
}
