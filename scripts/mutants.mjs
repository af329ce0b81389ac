import { spawn } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import { relative } from 'node:path'
import { ensureDependencies, ROOT } from './dependencies.mjs'

ensureDependencies()
process.chdir(ROOT)
const { MUTANTS, mutated } = await import('../test/mutants/mutants.mjs')

const PARTS = 10
const USAGE = 'usage: npm run mutants [-- --tenth N | -- --only WORDS]'

/** @param {string} name */
const argumentOf = (name) => {
  const at = process.argv.indexOf(name)
  return at < 0 ? undefined : process.argv[at + 1]
}
const [tenth, only] = [argumentOf('--tenth'), argumentOf('--only')]
if (process.argv.length > 2 && tenth === undefined && only === undefined) {
  console.error(USAGE)
  process.exit(2)
}
/** What is run: all, the N-th of every ten, or those whose fault has the words. */
const chosen = [...MUTANTS.entries()].filter(
  ([index, { fault, file }]) =>
    (tenth === undefined || index % PARTS === Number(tenth) % PARTS) &&
    (only === undefined || fault.includes(only) || file.includes(only)),
)
for (const [, mutant] of chosen) mutated(mutant, readFileSync(mutant.file, 'utf8'))

/**
 * Runs the nearest tests on the source with one fault in it: vitest.config.ts plants it while the file is read, so that
 * nothing on the disk changes and nothing has to be put back.
 *
 * @param {number} index
 * @returns {Promise<string | undefined>} the file of the test that found it
 */
const finderOf = (index) =>
  new Promise((resolve, reject) => {
    const run = spawn(
      process.execPath,
      [
        'node_modules/vitest/vitest.mjs',
        ...['run', '--project', 'core*', '--bail', '1', '--reporter', 'json'],
        ...(MUTANTS[index]?.tests ?? []),
      ],
      { stdio: ['ignore', 'pipe', 'ignore'], env: { ...process.env, MUTANT: String(index) } },
    )
    let text = ''
    run.stdout.on('data', (part) => {
      text += part
    })
    run.on('close', () => {
      const result = JSON.parse(text.slice(text.indexOf('{"numTotalTestSuites"')))
      if (result.numTotalTests === 0) reject(new Error(`no tests in ${MUTANTS[index]?.tests.join(', ')}`))
      // The list's own test reads the file as it stands on the disk, so only a real test can fail here.
      const failed = result.testResults.find(
        (/** @type {{ status: string }} */ { status }) => status !== 'passed',
      )
      resolve(failed && relative(ROOT, failed.name))
    })
  })

const survivors = /** @type {string[]} */ ([])
const waiting = [...chosen]
const worker = async () => {
  for (let next = waiting.shift(); next; next = waiting.shift()) {
    const [index, { fault, file }] = next
    const finder = await finderOf(index)
    if (!finder) survivors.push(fault)
    console.log(`${file.padEnd(36)} ${fault.padEnd(52)} ${finder ?? 'SURVIVED'}`)
  }
}
await Promise.all(Array.from({ length: Math.max(1, Math.min(2, availableParallelism())) }, worker))
console.log(`\n${chosen.length - survivors.length} of ${chosen.length} planted faults found`)
process.exit(survivors.length > 0 ? 1 : 0)
