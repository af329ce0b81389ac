import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { MUTANTS, mutated } from './mutants.mjs'

test('there are at least sixty planted faults, each with a name of its own', () => {
  expect(MUTANTS.length).toBeGreaterThanOrEqual(60)
  expect(new Set(MUTANTS.map(({ fault }) => fault)).size).toBe(MUTANTS.length)
})

test.each(MUTANTS)('$fault: its line still stands once in $file', (mutant) => {
  const source = readFileSync(mutant.file, 'utf8')
  expect(mutated(mutant, source)).not.toBe(source)
})
