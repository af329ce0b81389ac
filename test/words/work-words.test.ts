import { expect, test } from 'vitest'
import { METRES_PER_MILE } from '../../src/units'
import { tongueOf } from '../../src/words/tongue'
import { formatHours, hoursSentence, loadsSentence, loadWords, sharedWords } from '../../src/words/work-words'
import { SMALL_PLAN } from '../panel/small-plan'

const [metric, us] = [tongueOf(SMALL_PLAN, 'metric'), tongueOf(SMALL_PLAN, 'us')]
const mile = { kind: 'spool', wire: 'wd-1a', lengthM: METRES_PER_MILE } as const
const loads = {
  ...{ perPersonKg: 22, people: 4, items: [], totalKg: 100, personLoads: 5, trips: 2 },
  kgByKind: { wire: 0, reel: 0, set: 0, battery: 0, gear: 0, tools: 0 },
  shared: [{ thing: mile, eachKg: 25, people: 2 }],
}

test('a spool is told by what it is, how long, and of which wire', () => {
  expect(loadWords(mile, metric)).toMatch(/, 1609 m of Field wire WD-1A/)
  expect(loadWords(mile, us)).toMatch(/, 5280 ft of Field wire WD-1A/)
  expect(loadWords({ kind: 'set', set: 'crank-1000' }, us)).toBe('Crank set, 1000 Ω ringer')
  expect(loadWords({ kind: 'cell', cell: null }, us)).toBe('Dry cell')
  expect(loadWords({ kind: 'cell', cell: 'lr20' }, us)).toBe('D alkaline, LR20')
  expect(loadWords({ kind: 'test-set' }, us)).toBe('Test set of a crew')
})

// 1 lb is 0.45359237 kg: NIST Special Publication 811 (2008), appendix B.8.
test('loads are told in the person’s units', () => {
  expect(loadsSentence(loads, metric)).toBe(
    '100.0 kg in all: 5 loads of at most 22.0 kg, 2 trips for 4 people.',
  )
  expect(loadsSentence(loads, us)).toBe('220.5 lb in all: 5 loads of at most 48.5 lb, 2 trips for 4 people.')
  expect(sharedWords(loads, us)[0]).toMatch(/5280 ft of Field wire WD-1A.*: 55\.1 lb, two people carry it$/)
})

test('hours are told to five minutes, and who lays', () => {
  expect([0, 0.66, 5.18].map(formatHours)).toEqual(['0 min', '40 min', '5 h 10 min'])
  const net = {
    ...{ lines: [], crews: 2, crew: 4, crewWanted: 4, isNight: false, stationsH: 0 },
    ...{ totalH: 5.18, recoveryH: 3, personHours: 0 },
  }
  expect(hoursSentence(net)).toBe('Two crews of four lay it in 5 h 10 min by day; recovery 3 h.')
})
