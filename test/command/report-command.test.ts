import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { readFile, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { runReport } from '../../src/command/report-command'
import type { Report } from '../../src/report/report'

const DEMO = 'public/demo.plan.geojson'
const folder = mkdtempSync(join(tmpdir(), 'fieldpair-report-'))

/** `npm run -s report -- …`, without npm. */
const report = (...args: readonly string[]) =>
  spawnSync(process.execPath, ['scripts/report.mjs', ...args], { encoding: 'utf8' })

/** The same without a process: in what it makes of its arguments they do not differ. */
async function reported(...args: readonly string[]) {
  let [stdout, stderr] = ['', '']
  const status = await runReport(args, {
    readBytes: (path) => readFile(path),
    write: (path, content) => writeFile(path, content),
    out: (text) => {
      stdout += text
    },
    err: (text) => {
      stderr += text
    },
  })
  return { status, stdout, stderr }
}

test('a plan gives one JSON object on standard output, and nothing beside it', () => {
  const { status, stdout, stderr } = report(DEMO)
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
  expect((JSON.parse(stdout) as Report).title).toBe('Ravel Moor survey camp')
})

test('every fault of a bad plan stands on a line of standard error, and nothing on standard output', () => {
  const file = join(folder, 'bad.plan.geojson')
  const plan = JSON.parse(readFileSync(DEMO, 'utf8'))
  plan.plan.circuits[0].sets.camp = 'no-such-set'
  plan.features.at(-1).geometry.coordinates[0][0] = [67, 95]
  writeFileSync(file, JSON.stringify(plan))
  const { status, stdout, stderr } = report(file)
  expect({ status, stdout }).toEqual({ status: 2, stdout: '' })
  const lines = stderr.trimEnd().split('\n')
  expect(lines.some((line) => line.startsWith('plan.circuits[0].sets'))).toBe(true)
  expect(lines.some((line) => line.startsWith(`features[${plan.features.length - 1}].geometry`))).toBe(true)
})

test.each([
  ['no file', []],
  ['a file that is not there', ['nowhere.plan.geojson']],
  ['a raster that is none', [DEMO, '--terrain', 'README.md']],
  ['an option that is none', [DEMO, '--frobnicate']],
  ['a remedy without a place for its plan', [DEMO, '--remedy', 'stores-line:0']],
  [
    'a remedy that is not listed',
    [DEMO, '--remedy', 'stores-line:99', '--out', join(folder, 'never.geojson')],
  ],
])('%s ends in a sentence and exit 2', async (_what, args) => {
  const { status, stdout, stderr } = await reported(...args)
  expect({ status, stdout }).toEqual({ status: 2, stdout: '' })
  expect(stderr).toMatch(/^\S.+ .+\n$/)
})

test('a remedy is written as a plan in which the circuit stands as was promised', async () => {
  const out = join(folder, 'mended.plan.geojson')
  const before = JSON.parse(
    (await reported(DEMO, '--remedy', 'stores-line:0', '--out', out)).stdout,
  ) as Report
  const promised = before.circuits.find(({ id }) => id === 'stores-line')!.remedies[0]!
  const after = JSON.parse((await reported(out)).stdout) as Report
  const { verdict, worst } = after.circuits.find(({ id }) => id === 'stores-line')!
  expect({ verdict, worst: worst.verdict }).toEqual({ verdict: promised.verdict, worst: promised.worst })
})
