import { describe, expect, test } from 'vitest'
import { tallyOf } from '../../src/catalog/source-tally'
import { SOURCED } from '../../src/catalog/sourced'
import { derivedOnMemory, fromMemory, read } from '../../src/catalog/sources'
import { sourceKind, spreadText, tallySentence } from '../../src/words/source-words'

const entry = {
  id: 'own',
  kg: 3,
  lengthsM: [1, 2],
  ringer: { ohms: 1000, minVolts: 12 },
  volts: 48,
  sources: {
    kg: read('A page.'),
    ringer: fromMemory('From memory.'),
    'ringer.ohms': derivedOnMemory('Twice that.'),
    volts: 'Changed by hand.',
  },
  spread: { kg: 5 },
}

describe('how figures are known', () => {
  test('is counted figure by figure, and what rests on memory is counted with it', () => {
    const tally = tallyOf([entry])
    expect(tally).toMatchObject({ figures: 5, onMemory: 2, own: 2 })
    expect(tally.byKind).toMatchObject({ read: 1, memory: 1, derived: 1, allowance: 0 })
    expect(tallySentence(tally)).toBe(
      '5 figures: 1 read, 1 derived, 1 from memory, 2 of your own; 2 rest on memory in all.',
    )
  })

  test('is said in a word or two', () => {
    expect(sourceKind(read('A page.'))).toBe('read')
    expect(sourceKind(derivedOnMemory('So.'))).toBe('derived, in part from memory')
    expect([sourceKind({ says: 'Changed by hand.' }), sourceKind(undefined)]).toEqual(['', ''])
    expect([spreadText(8), spreadText(200)]).toEqual(['± 8 %', '÷ or × 3'])
  })

  test('is known for every figure that the program brings', () => {
    const tally = tallyOf([...SOURCED.wires, ...SOURCED.sets, ...SOURCED.supplies])
    expect(tally.own).toBe(0)
    expect(tally.figures).toBe(Object.values(tally.byKind).reduce((sum, count) => sum + count, 0))
  })
})
