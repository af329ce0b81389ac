import { expect, test } from 'vitest'
import { shaded } from '../../src/fault/shade'

const cell = (line: string, fromM: number, toM: number, chance: number) => ({ line, fromM, toM, chance })

test('the darkest pieces are the densest, and each tone with those before holds as much as it says', () => {
  const pieces = shaded([
    cell('a', 0, 400, 0.004),
    cell('a', 400, 420, 0.3),
    cell('a', 420, 440, 0.3),
    cell('a', 440, 480, 0.236),
    cell('b', 0, 100, 0.14),
    cell('b', 100, 300, 0.02),
  ])
  expect(pieces).toEqual([
    { line: 'a', fromM: 400, toM: 440, chance: 0.6, tone: 0 },
    { line: 'a', fromM: 440, toM: 480, chance: 0.236, tone: 1 },
    { line: 'b', fromM: 0, toM: 100, chance: 0.14, tone: 2 },
    { line: 'b', fromM: 100, toM: 300, chance: 0.02, tone: 3 },
  ])
})
