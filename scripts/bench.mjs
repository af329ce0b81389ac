import { ensureDependencies } from './dependencies.mjs'

ensureDependencies()
const { load } = await import('./bundle.mjs')
const { rows } = await load('test/bench/rows.ts')

const time = (/** @type {number} */ ms) =>
  ms < 1 ? `${(ms * 1000).toFixed(0)} µs` : `${ms.toFixed(ms < 10 ? 2 : 0)} ms`

for (const row of rows) {
  const { what, ms, against = [], goal } = await row()
  console.log(`\n${what}: ${time(ms)}`)
  for (const other of against)
    console.log(`  ${Math.round(other.ms / ms)} × faster than ${other.by}, ${time(other.ms)}`)
  if (goal) console.log(`  goal ${goal.text}: ${goal.met ? 'met' : 'NOT MET'}`)
}
