// Writes src/catalog/built-in.json: the figures of every built-in entry, without their sources, for the first screen.
import { ensureDependencies, ROOT } from './dependencies.mjs'

ensureDependencies()
process.chdir(ROOT)

const { startVitest } = await import('vitest/node')
const vitest = await startVitest('test', ['test/catalog/figures.test.ts'], { watch: false, update: true })
await vitest.close()
