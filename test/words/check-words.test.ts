import { describe, expect, test } from 'vitest'
import { CHECK_WORDS } from '../../src/words/check-words'

const NAMES: Readonly<Record<string, string>> = { a: 'Hut', b: 'Quarry', c: 'Ford' }
const nameOf = (id: string) => NAMES[id] ?? id

const ring = (to: string, volts: number) => ({ from: 'a', to, volts, minVolts: 18 })

describe('will it ring', () => {
  test('names the one bell that does not, with what it gets and needs', () => {
    expect(CHECK_WORDS.ringing.answer([ring('b', 16.2), ring('c', 40)], nameOf)).toBe(
      'Not at Quarry: the bell gets 16.2 V and needs 18 V.',
    )
  })

  test('names all that do not, and the faintest', () => {
    expect(CHECK_WORDS.ringing.answer([ring('b', 16.2), ring('c', 12)], nameOf)).toBe(
      'Not at Quarry and Ford: the faintest bell, at Ford, gets 12.0 V and needs 18 V.',
    )
  })

  test('says barely under the comfort line of 1.25 times the least, and yes above it', () => {
    expect(CHECK_WORDS.ringing.answer([ring('b', 22)], nameOf)).toMatch(/^Barely at Quarry/)
    expect(CHECK_WORDS.ringing.answer([ring('b', 23)], nameOf)).toMatch(/^Yes\. The faintest bell, at Quarry/)
  })

  test('says that nothing rings where nothing can', () => {
    expect(CHECK_WORDS.ringing.answer([], nameOf)).toMatch(/^Nothing rings here/)
  })
})

describe('will it talk', () => {
  const speech = (lossDb: number) => [{ from: 'a', to: 'b', lossDb, maxDb: 30 }]
  test('tells loss beside the most, by the comfort line of 3 dB', () => {
    expect(CHECK_WORDS.voice.answer(speech(31), nameOf)).toBe(
      'Not from Hut to Quarry: 31.0 dB of loss, where 30 dB is the most.',
    )
    expect(CHECK_WORDS.voice.answer(speech(28), nameOf)).toMatch(/^Barely from Hut to Quarry/)
    expect(CHECK_WORDS.voice.answer(speech(20), nameOf)).toMatch(/^Yes\./)
    expect(CHECK_WORDS.voice.answer([], nameOf)).toMatch(/no two sets/)
  })
})

describe('is there enough current', () => {
  test('names the set, the current and the call', () => {
    const rows = [{ call: ['a', 'b'] as const, station: 'b', mA: 19, minMA: 20 }]
    expect(CHECK_WORDS.loop.answer(rows, nameOf)).toBe(
      'No: the set at Quarry gets 19.0 mA and needs 20 mA when Hut speaks with Quarry.',
    )
  })
})
