import { expect, test } from 'vitest'
import { EMPTY_PLAN } from '../../src/plan/plan'
import { lackSentence, remarkSentence } from '../../src/words/circuit-notes'
import { tongueOf } from '../../src/words/tongue'

const say = { ...tongueOf(EMPTY_PLAN, 'metric'), name: (id: string) => id.toUpperCase() }

test('what a circuit lacks names the stations, not their ids', () => {
  expect(lackSentence({ code: 'no-call', a: 'hut', b: 'ford', lamp: null }, say)).toBe(
    'HUT and FORD have no way to call each other by bell or lamp.',
  )
  expect(lackSentence({ code: 'no-supply', station: 'hut' }, say)).toMatch(/at HUT has no supply/)
})

test('bells beyond what a source is made for are told with load and limit', () => {
  const bells = { stations: ['hut', 'ford'], load: 8.0412, supply: '48 V feed', maxLoad: 5 }
  expect(remarkSentence({ code: 'bells-over-load', ...bells }, say)).toBe(
    'The bells at HUT and FORD are a load of 8.0; 48 V feed is made for 5.',
  )
})

test('an end of wire where nobody listens is named', () => {
  expect(remarkSentence({ code: 'nobody-listens', stations: ['hut'] }, say)).toBe(
    'Nobody listens at HUT: the wire ends there without a telephone.',
  )
})
