import { expect, test } from 'vitest'
import { rowsOfKind } from '../../src/budget/circuit-rows'
import { DRY, OHMS_ONLY, plainSet, rowOfSets } from '../reference/test-circuit'

const plain = plainSet({ offHook: { dcOhms: 200, acOhms: 600, minMA: 0 } })
const button = plainSet({ offHook: { dcOhms: 200, acOhms: 600, speakAcOhms: 300, minMA: 0 } })

/** Loss between two sets over 1000 Ω of wire, one way and the other, dB. */
const losses = (a: typeof plain, b: typeof plain) =>
  rowsOfKind('voice', rowOfSets([a, b], OHMS_ONLY, 1000), DRY).map(({ lossDb }) => lossDb)

test('a set whose button is pressed is a source of its own impedance, and listens with the other', () => {
  // Insertion loss of R in series between Za and Zb: 20 log ((Za + Zb + R) / (Za + Zb)).
  const [there, back] = losses(button, plain)
  expect(there).toBeCloseTo(20 * Math.log10(1900 / 900), 4)
  expect(back).toBeCloseTo(20 * Math.log10(2200 / 1200), 4)
  expect(losses(plain, plain)[0]).toBeCloseTo(20 * Math.log10(2200 / 1200), 4)
})

test('two such sets lose the same both ways', () => {
  const [there, back] = losses(button, button)
  expect(there).toBeCloseTo(20 * Math.log10(1900 / 900), 4)
  expect(back).toBeCloseTo(there!, 9)
})
