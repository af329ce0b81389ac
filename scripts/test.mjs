import { spawn } from 'node:child_process'
import { findBrowser, installBrowser, installShellBesideChromium, installWithApt, works } from './browser.mjs'
import { ensureDependencies, ROOT, stop } from './dependencies.mjs'
import { builtSite } from './site.mjs'

ensureDependencies()
process.chdir(ROOT)

if (findBrowser()) installShellBesideChromium()
else {
  const installed = await installBrowser()
  if (!installed)
    stop(
      'The browser tests need a Chromium: install one, or name yours in the environment variable CHROMIUM.',
    )
  // One from npm lies where nobody else would look.
  if (installed !== findBrowser()) process.env.CHROMIUM = installed
}

const canReadPdf = () => works('pdftotext', ['-v'])
if (!canReadPdf()) installWithApt(['poppler-utils'])
if (!canReadPdf())
  stop(
    'The tests of the printed papers need pdftotext: install poppler-utils (Debian, Ubuntu, Fedora) or poppler (Homebrew).',
  )

/**
 * What it says is held back till its end, so that checks can run at the same time.
 *
 * @param {string} name
 * @param {string} script path under the project
 * @param {string[]} args
 * @returns {Promise<boolean>} whether it passed
 */
function check(name, script, args) {
  const run = spawn(process.execPath, [script, ...args], { stdio: ['ignore', 'pipe', 'pipe'] })
  let text = ''
  for (const stream of [run.stdout, run.stderr])
    stream.setEncoding('utf8').on('data', (part) => {
      text += part
    })
  return new Promise((resolve) => {
    run.on('close', (code) => {
      console.log(`\n${name}: ${code === 0 ? 'passed' : 'FAILED'}${text && `\n${text.trimEnd()}`}`)
      resolve(code === 0)
    })
  })
}

const args = process.argv.slice(2)
/** They go on beside the first tests, which wait for one another, or for a file, part of the time. */
const checking = Promise.all([
  check('Types', 'node_modules/typescript/bin/tsc', [
    ...['--noEmit', '--incremental', '--tsBuildInfoFile', 'node_modules/.cache/fieldpair/types.tsbuildinfo'],
  ]),
  check('Lint', 'node_modules/@biomejs/biome/bin/biome', ['check', '.']),
  check('What nothing uses', 'node_modules/knip/bin/knip.js', []),
])
// For the tests of the browser, which tell of it where it cannot be built.
if (args.length === 0) await builtSite().catch(() => undefined)

console.log('\nTests')
const { startVitest } = await import('vitest/node')
const vitest = await startVitest('test', args, { watch: false })
const modules = vitest.state.getTestModules()
const states = modules.flatMap((module) => [...module.children.allTests()]).map((test) => test.result().state)
const broken =
  modules.filter((module) => module.errors().length > 0).length + vitest.state.getUnhandledErrors().length
await vitest.close()
const checks = await checking

// Each day another tenth of the planted faults; `npm run mutants` tries them all.
const DAY_MS = 24 * 60 * 60 * 1000
if (process.env.CI) {
  const today = Math.floor(Date.now() / DAY_MS) % 10
  checks.push(
    await check('Planted faults, a tenth of them', 'scripts/mutants.mjs', ['--tenth', String(today)]),
  )
}

const count = (/** @type {string} */ state) => states.filter((each) => each === state).length
const failed = count('failed') + count('pending') + broken + checks.filter((passed) => !passed).length
const skipped = count('skipped')
console.log(`\n${count('passed')} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`)
process.exit(failed > 0 || count('passed') === 0 ? 1 : 0)
