import { describe, expect, test } from 'vitest'
import type { Check } from '../../src/budget/rows'
import { loopSentence, reachSentence, ringingSentence, voiceSentence } from '../../src/words/circuit-words'

const NAMES: Readonly<Record<string, string>> = { a: 'Hut', b: 'Quarry', c: 'Ford' }
const nameOf = (id: string) => NAMES[id] ?? id

const ring = (to: string, volts: number) => ({ from: 'a', to, volts, minVolts: 18 })

describe('will it ring', () => {
  test('names the one bell that does not, with what it gets and needs', () => {
    expect(ringingSentence([ring('b', 16.2), ring('c', 40)], nameOf)).toBe(
      'Not at Quarry: the bell gets 16.2 V and needs 18 V.',
    )
  })

  test('names all that do not, and the faintest', () => {
    expect(ringingSentence([ring('b', 16.2), ring('c', 12)], nameOf)).toBe(
      'Not at Quarry and Ford: the faintest bell, at Ford, gets 12.0 V and needs 18 V.',
    )
  })

  test('says barely under the comfort line of 1.25 times the least, and yes above it', () => {
    expect(ringingSentence([ring('b', 22)], nameOf)).toMatch(/^Barely at Quarry/)
    expect(ringingSentence([ring('b', 23)], nameOf)).toMatch(/^Yes\. The faintest bell, at Quarry/)
  })

  test('says that nothing rings where nothing can', () => {
    expect(ringingSentence([], nameOf)).toMatch(/^Nothing rings here/)
  })
})

describe('will it talk', () => {
  const speech = (lossDb: number) => [{ from: 'a', to: 'b', lossDb, maxDb: 30 }]
  test('tells loss beside the most, by the comfort line of 3 dB', () => {
    expect(voiceSentence(speech(31), nameOf)).toBe(
      'Not from Hut to Quarry: 31.0 dB of loss, where 30 dB is the most.',
    )
    expect(voiceSentence(speech(28), nameOf)).toMatch(/^Barely from Hut to Quarry/)
    expect(voiceSentence(speech(20), nameOf)).toMatch(/^Yes\./)
    expect(voiceSentence([], nameOf)).toMatch(/no two sets/)
  })
})

describe('is there current enough', () => {
  test('names the set, the current and the call', () => {
    const rows = [{ call: ['a', 'b'] as const, station: 'b', mA: 19, minMA: 20 }]
    expect(loopSentence(rows, nameOf)).toBe(
      'No: the set at Quarry gets 19.0 mA and needs 20 mA when Hut speaks with Quarry.',
    )
  })
})

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
