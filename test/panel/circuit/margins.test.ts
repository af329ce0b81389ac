import { expect, test } from 'vitest'
import { marginRows } from '../../../src/panel/circuit/margins'

const nameOf = (id: string) => id.toUpperCase()

test('the share is 1 where there is just what is needed, for each kind of check', () => {
  expect(marginRows('ringing', [{ from: 'a', to: 'b', volts: 18, minVolts: 18 }], nameOf)[0]?.share).toBe(1)
  expect(marginRows('loop', [{ call: ['a', 'b'], station: 'b', mA: 20, minMA: 20 }], nameOf)[0]?.share).toBe(
    1,
  )
  expect(marginRows('voice', [{ from: 'a', to: 'b', lossDb: 30, maxDb: 30 }], nameOf)[0]?.share).toBe(1)
})

test('more loss never stands better', () => {
  const shares = [0, 10, 29, 30, 31, 60, 1e6].map(
    (lossDb) => marginRows('voice', [{ from: 'a', to: 'b', lossDb, maxDb: 30 }], nameOf)[0]!.share,
  )
  expect(shares).toEqual(shares.toSorted((x, y) => y - x))
})

test('two ways of speech that read alike are one row, and others are two', () => {
  const there = { from: 'a', to: 'b', lossDb: 12.31, maxDb: 30 }
  expect(marginRows('voice', [there, { ...there, from: 'b', to: 'a', lossDb: 12.29 }], nameOf)).toMatchObject(
    [{ name: 'A ↔ B', is: '12.3 dB' }],
  )
  expect(marginRows('voice', [there, { ...there, from: 'b', to: 'a', maxDb: 20 }], nameOf)).toMatchObject([
    { name: 'A → B' },
    { name: 'B → A' },
  ])
})

test('a set that needs no current and a bell that needs no volts have all to spare', () => {
  expect(marginRows('loop', [{ call: ['a', 'b'], station: 'b', mA: 0, minMA: 0 }], nameOf)[0]).toMatchObject({
    verdict: 'works',
    share: 3,
  })
})
