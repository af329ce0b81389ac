// Writes test/reference/SOURCES.md: every published figure that the tests hold the program to.
import { ensureDependencies, ROOT } from './dependencies.mjs'

ensureDependencies()
process.chdir(ROOT)

const { startVitest } = await import('vitest/node')
const vitest = await startVitest('test', ['test/reference/sources.test.ts'], { watch: false, update: true })
await vitest.close()
