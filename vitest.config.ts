import { defineConfig } from 'vitest/config'

// The browser's tests wait for the others: their timing suffers from company.
export default defineConfig({
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
