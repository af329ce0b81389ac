import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { AxeResults, RunOptions } from 'axe-core'
import type { Page } from 'playwright-core'

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/** What axe finds against WCAG 2.2, levels A and AA, and its own best practices, or by some of its rules alone. */
export async function complaintsOf(page: Page, rules?: readonly string[]): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(AXE)
  const results = await page.evaluate(
    (rules) =>
      (window as unknown as { axe: { run(options: RunOptions): Promise<AxeResults> } }).axe.run({
        // What passes is half of its work, and nobody looks at it.
        resultTypes: ['violations'],
        ...(rules && { runOnly: [...rules] }),
      }),
    rules,
  )
  return results.violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target }) => `${id}: ${target.join(' ')}`),
  )
}
