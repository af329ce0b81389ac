import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { AxeResults } from 'axe-core'
import type { Page } from 'playwright-core'

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/** What axe finds against WCAG 2.2, levels A and AA, and its own best practices. */
export async function complaintsOf(page: Page): Promise<string[]> {
  await page.evaluate(AXE)
  const results = await page.evaluate(() =>
    (window as unknown as { axe: { run(): Promise<AxeResults> } }).axe.run(),
  )
  return results.violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target }) => `${id}: ${target.join(' ')}`),
  )
}
