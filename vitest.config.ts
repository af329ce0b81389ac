import { resolve } from 'node:path'
import { defineConfig, type Plugin } from 'vitest/config'
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

// The browser's tests wait for the others: their timing suffers from company.
export default defineConfig({
  plugins: [plantedFault()],
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'core',
          include: ['test/**/*.test.{ts,tsx}'],
          exclude: ['test/browser/**'],
          setupFiles: ['test/fixed-seed.ts'],
          // Laws of many cases, solvers and processes: a slow machine must not fail them.
          testTimeout: 30_000,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['test/browser/**/*.test.ts'],
          globalSetup: ['test/browser/build-site.ts'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
          fileParallelism: false,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
})
