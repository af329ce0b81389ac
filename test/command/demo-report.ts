import { readFile } from 'node:fs/promises'
import { runReport } from '../../src/command/report-command'
import type { reportInWords } from '../../src/words/json-report'

/** What the command line prints of the demo, without a process of its own. */
export async function demoReport(...options: readonly string[]): Promise<ReturnType<typeof reportInWords>> {
  let printed = ''
  const code = await runReport(['public/demo.plan.geojson', ...options], {
    readBytes: (path) => readFile(path),
    write: () => Promise.reject(new Error('nothing is to be written')),
    out: (text) => {
      printed += text
    },
    err: (text) => {
      throw new Error(text)
    },
  })
  if (code !== 0) throw new Error(`the command line ended with ${code}`)
  return JSON.parse(printed)
}
