import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { defineConfig, type Plugin } from 'vitest/config'
import { BaseSequencer, type TestSpecification } from 'vitest/node'
import { MUTANTS, mutated } from './test/mutants/mutants.mjs'

/** Plants one fault into the source while it is read: see scripts/mutants.mjs. */
function plantedFault(): Plugin {
  const mutant = MUTANTS[Number(process.env.MUTANT ?? Number.NaN)]
  const file = mutant && resolve(mutant.file)
  return {
    name: 'planted-fault',
    enforce: 'pre',
    transform: (source, id) => (mutant && id === file ? mutated(mutant, source) : undefined),
  }
}

/** What is waited for comes soon, but not on a machine that has ten other things to do. */
const PATIENT = { poll: { timeout: 20_000 } }
const BROWSER = {
  globalSetup: ['test/browser/build-site.ts'],
  testTimeout: 60_000,
  hookTimeout: 60_000,
  expect: PATIENT,
  // A browser, a server and a worker beside each other meet in every order: what fails twice is a fault.
  retry: 1,
}
const CORE = {
  setupFiles: ['test/fixed-seed.ts'],
  // Laws of many cases, solvers and processes: a slow machine must not fail them.
  testTimeout: 120_000,
  hookTimeout: 60_000,
  expect: PATIENT,
  // Vitest leaves one processor free, which is half of a small machine.
  maxWorkers: '100%',
  sequence: { groupOrder: 0 },
}
/** Where modules hold what changes (signals, a document, a store): each file begins with new ones. */
const STATEFUL = [
  ...['jobs', 'map', 'panel', 'state', 'storage'].map((folder) => `test/${folder}/**/*.test.{ts,tsx}`),
  // Reads its modules anew itself.
  'test/report/edited-report.test.ts',
  'test/share/over-a-box.test.ts',
  'test/share/own-journal.test.ts',
  'test/sheet/papers.test.tsx',
]
/** What measures the page's own pace: company would slow it down. */
const ALONE = ['test/browser/papers-pace.test.ts']

/** Files with a page after those without: a process has a page or none, and stays while the next file asks for the same. */
class PagesLast extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files)
    const hasPage = new Map(
      sorted.map((file) => [file, readFileSync(file.moduleId, 'utf8').startsWith('// @vitest-environment')]),
    )
    const rank = (file: TestSpecification) =>
      2 * sorted.findIndex(({ project }) => project === file.project) + Number(hasPage.get(file))
    return sorted.sort((one, other) => rank(one) - rank(other))
  }
}

// One group after the other: tests of the core would take the time of those that visit the site.
export default defineConfig({
  plugins: [plantedFault()],
  test: {
    sequence: { sequencer: PagesLast },
    projects: [
      {
        extends: true,
        test: {
          ...CORE,
          name: 'core',
          include: ['test/**/*.test.{ts,tsx}'],
          exclude: ['test/browser/**', ...STATEFUL],
          // Pure functions leave nothing behind: their modules are read once for all files.
          isolate: false,
        },
      },
      {
        extends: true,
        test: {
          ...CORE,
          name: 'core-page',
          include: STATEFUL,
          isolate: false,
          setupFiles: [...CORE.setupFiles, 'test/begin-anew.ts'],
          alias: { 'vitest-environment-page': resolve('test/page-environment.ts') },
          server: { deps: { inline: ['leaflet', 'idb', 'fake-indexeddb'] } },
        },
      },
      {
        extends: true,
        test: {
          ...BROWSER,
          name: 'browser',
          include: ['test/browser/**/*.test.ts'],
          exclude: ALONE,
          // The browser stays, and so do the modules.
          isolate: false,
          // Each has a browser of several processes beside it, which wait for one another half of the time.
          maxWorkers: 2,
          sequence: { groupOrder: 1 },
        },
      },
      {
        extends: true,
        test: { ...BROWSER, name: 'alone', include: ALONE, maxWorkers: 1, sequence: { groupOrder: 2 } },
      },
    ],
  },
})
