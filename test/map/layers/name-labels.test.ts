// @vitest-environment page
import { expect, test } from 'vitest'
import { nameLines } from '../../../src/map/layers/name-labels'

const bare = (lines: readonly string[]) => lines.map((line) => line.replace(/[\u2068\u2069]/g, ''))

test('a name of seventy letters is written whole, in lines broken between words', () => {
  const name = 'Upper Sheepfold relay beside the old stone sheepfold below the quarry'
  const lines = bare(nameLines(name))
  expect(lines.join(' ')).toBe(name)
  expect(lines.every(({ length }) => length <= 28)).toBe(true)
})

test('a name beyond all measure is cut after three lines, also one without blanks', () => {
  for (const name of ['W'.repeat(10_000), 'to and fro '.repeat(1000)]) {
    const lines = bare(nameLines(name))
    expect([lines.length, lines[2]!.endsWith('…')]).toEqual([3, true])
  }
})

test('a short name is one line', () => {
  expect(bare(nameLines('Mill'))).toEqual(['Mill'])
})
