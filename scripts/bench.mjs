import { availableParallelism, loadavg } from 'node:os'
import { ensureDependencies } from './dependencies.mjs'

ensureDependencies()
const { load } = await import('./bundle.mjs')
const { rows, closeSite } = await load('test/bench/rows.ts')

const wishes = process.argv.slice(2)
const isCheck = wishes.includes('--check')
const names = wishes.filter((wish) => wish !== '--check')
const unknown = names.filter((name) => !(name in rows))
if (unknown.length > 0) {
  console.error(`No rows of that name: ${unknown.join(', ')}. There are ${Object.keys(rows).join(', ')}.`)
  process.exit(2)
}

const time = (/** @type {number} */ ms) =>
  ms < 1 ? `${(ms * 1000).toFixed(0)} µs` : `${ms.toFixed(ms < 10 ? 2 : 0)} ms`
const ratio = (/** @type {number} */ times) => times.toFixed(times < 10 ? 1 : 0)

/** How many programs want this machine at once; with more than it has processors, what waits for a clock below is too long. */
const load1 = () => {
  const [wanted = 0] = loadavg()
  const have = availableParallelism()
  return `${wanted.toFixed(1)} programs on ${have} processors${wanted > have ? ': busy' : ''}`
}

console.log(`At the start: ${load1()}`)
let short = 0
for (const [name, group] of Object.entries(rows)) {
  if (names.length > 0 && !names.includes(name)) continue
  for (const row of group) {
    const { what, ms, figures, against = [], goals = [] } = await row()
    console.log(`\n${what}${ms === undefined ? '' : `: ${time(ms)}`}`)
    if (figures) console.log(`  ${figures}`)
    for (const other of against)
      console.log(`  ${ratio(other.ms / ms)} × faster than ${other.by}, ${time(other.ms)}`)
    for (const { text, met, kind } of goals) {
      console.log(`  goal ${text}: ${met ? 'met' : 'NOT MET'}`)
      if (!met && kind !== 'time') short++
    }
  }
}
await closeSite()
console.log(`\nAt the end: ${load1()}`)
if (isCheck && short > 0) {
  console.error(`${short} of the ratios, growths and counts fall short.`)
  process.exit(1)
}
process.exit(0)
