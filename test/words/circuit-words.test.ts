import { describe, expect, test } from 'vitest'
import type { Check } from '../../src/budget/rows'
import { reachSentence } from '../../src/words/circuit-words'

const NAMES: Readonly<Record<string, string>> = { a: 'Hut', b: 'Quarry', c: 'Ford' }
const nameOf = (id: string) => NAMES[id] ?? id

describe('how far could it go', () => {
  const check: Check = { kind: 'ringing', from: 'a', to: 'b' }
  const reach = (factor: number) => reachSentence({ factor, limitedBy: '', check }, nameOf)
  test.each([
    [2.34, 'It would reach 2.3 times as far before the bell at Quarry fails.'],
    [1.4, 'It could be 40 % longer before the bell at Quarry fails.'],
    [1.001, 'It could be less than 1 % longer before the bell at Quarry fails.'],
    [1 / 1.09, 'As drawn it is 9 % too long for the bell at Quarry.'],
    [0.25, 'As drawn it is 4.0 times as long as the bell at Quarry allows.'],
    [0, 'Nowhere: the bell at Quarry fails with no wire at all.'],
  ])('reads the factor %f as a sentence', (factor, sentence) => {
    expect(reach(factor)).toBe(sentence)
  })

  test('says so where length is not what limits it', () => {
    expect(reachSentence({ factor: 1000, limitedBy: '', check: null }, nameOf)).toMatch(/not what limits/)
  })
})
