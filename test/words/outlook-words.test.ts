import { describe, expect, test } from 'vitest'
import type { Tip } from '../../src/budget/odds'
import { EMPTY_PLAN } from '../../src/plan/plan'
import { hundredOf, hundredWords, oddsSentence, tipGroups, tipSentence } from '../../src/words/odds-words'
import {
  aloneSentences,
  callingSentence,
  crowdSentence,
  enduranceSentences,
  leftSentence,
  quotedSentence,
  reachAlongSentence,
  worstSentence,
} from '../../src/words/outlook-words'
import { tongueOf } from '../../src/words/tongue'

const say = { ...tongueOf(EMPTY_PLAN, 'metric'), name: (id: string) => id.toUpperCase() }
const us = { ...tongueOf(EMPTY_PLAN, 'us'), name: (id: string) => id.toUpperCase() }
const loop = { kind: 'loop', call: ['hut', 'ford'], station: 'ford' } as const
const bell = { kind: 'ringing', from: 'hut', to: 'ford' } as const

test('how one calls is a sentence that a person can act on', () => {
  expect(callingSentence({ how: 'crank', bells: 2, without: [] }, say)).toBe('Crank; both others ring.')
  expect(callingSentence({ how: 'crank', bells: 1, without: ['ford'] }, say)).toBe(
    'Crank; the other rings. FORD cannot crank, and must be called.',
  )
  expect(callingSentence({ how: 'lamp', station: 'hut' }, say)).toMatch(
    /^Lift and wait: the lamp at HUT lights/,
  )
  expect(callingSentence({ how: 'lift', sides: 2 }, say)).toBe('Lift; the other side of the unit rings.')
})

test('why it fails in the worst weather names each part that it takes', () => {
  const worst = { wireTempC: 50 } as Parameters<typeof worstSentence>[1]
  expect(worstSentence({ verdict: 'fails', parts: ['wet', 'hot', 'battery'], check: loop }, worst, say)).toBe(
    'fails wet, at 50 °C, with the battery spent: the current at FORD',
  )
  expect(worstSentence({ verdict: 'fails', parts: ['hot'], check: loop }, worst, us)).toBe(
    'fails at 122 °F: the current at FORD',
  )
  expect(worstSentence(null, worst, say)).toBe('')
})

test('a battery is told with what ends it', () => {
  const row = {
    set: null,
    days: 12.3,
    until: { code: 'check', check: loop },
    atVolts: 11.42,
    drain: null,
  } as const
  expect(enduranceSentences([row], say)).toEqual([
    'The supply: about 12 days, until the current at FORD fails, at 11.4 V.',
  ])
  const silent = { ...row, set: 'hut', days: null, until: { code: 'unknown', lacks: 'cells' } } as const
  const other = { ...silent, set: 'ford' }
  expect(enduranceSentences([silent, row, other], say)).toEqual([
    'The sets at HUT and FORD: unknown: the cells inside the set are not stated.',
    'The supply: about 12 days, until the current at FORD fails, at 11.4 V.',
  ])
})

describe('the reach', () => {
  const reach = (factor: number) => ({ factor, limitedBy: '', check: bell })
  const along = (reachM: number) => ({ from: 'hut', to: 'ford', wireM: 5000, reachM })
  test('is told in lengths of wire, today and in the worst weather', () => {
    expect(
      reachAlongSentence(
        { reach: reach(6.6), worst: { reach: reach(3.8) } },
        { reachAlong: along(33_000), worstReachAlong: along(19_000) },
        say,
      ),
    ).toBe(
      'It would reach 33 km of this wire along this route (19 km in the worst weather), then the bell at FORD fails. It is 5.00 km from HUT to FORD now.',
    )
  })
  test('is nowhere where no wire at all fails', () => {
    const none = { reach: reach(0), worst: { reach: reach(0) } }
    const lengths = { reachAlong: along(0), worstReachAlong: along(0) }
    expect(reachAlongSentence(none, lengths, say)).toBe(
      'Nowhere: the bell at FORD fails with no wire at all.',
    )
  })
})

test('a handset left lying and everybody listening are told by the worst of them', () => {
  const row = (left: string, volts: number, ok: boolean) => ({
    left,
    ringing: { from: 'hut', to: 'ford', volts, minVolts: 16 },
    ok,
  })
  expect(leftSentence([row('hut', 20, true), row('mill', 10, false)], say)).toBe(
    'With the handset at MILL left off hook the bell at FORD stays silent: it gets 10.0 V and needs 16 V.',
  )
  expect(leftSentence([row('hut', 20, true)], say)).toMatch(/other bells still ring/)
  expect(crowdSentence({ from: 'hut', to: 'ford', lossDb: 31, maxDb: 30 }, say)).toMatch(
    /nobody is understood: 31.0 dB/,
  )
})

test('odds are told of a hundred, and never as sure where they are not', () => {
  const share = { works: 0.9995, low: 0.997, high: 0.99991 }
  const odds = { samples: 2000, today: share, worst: { works: 0.61, low: 0.588, high: 0.631 }, tips: [] }
  expect(oddsSentence(odds)).toBe(
    'Today over 99 of 100 such circuits work (99 to 100); in the worst weather 61 of 100 (58 to 64).',
  )
  expect(hundredOf(odds)).toEqual({ always: 61, today: 38, never: 1 })
  const all = { works: 1, low: 0.998, high: 1 }
  const none = { works: 0, low: 0, high: 0.0019 }
  expect(oddsSentence({ ...odds, today: all, worst: none })).toBe(
    'Today all of 2,000 such circuits work (at least 99 in 100); in the worst weather none of 2,000 (at most 1 in 100).',
  )
  expect(hundredWords(hundredOf({ ...odds, today: all, worst: none }))).toBe(
    'Of a hundred such circuits 0 work in any weather, 100 only today, 0 fail.',
  )
})

test('what the doubt hangs on is told by what to measure, the same figure at several stations as one', () => {
  const tip = (at: string, share: number) => ({ what: 'ringer.minVolts', entry: 'set', at, share })
  const told = (tips: readonly Tip[]) => tipGroups(tips).map((group) => tipSentence(group, String, say))
  expect(told([tip('ford', 0.66)])).toEqual([
    'Measure the volts that just ring the bell at FORD: on it hangs two thirds of the doubt.',
  ])
  expect(told([tip('ford', 0.2), tip('hut', 0.15), tip('mill', 0.15)])).toEqual([
    'Measure the volts that just ring the bell at FORD, HUT and MILL: on them hangs half of the doubt.',
  ])
  expect(told([{ what: 'loopOhmPerKm', entry: 'wire', share: 0.19 }])).toEqual([])
})

test('a reach beyond what people quote says why, and what each part of the worst weather takes of it', () => {
  const long = { from: 'hut', to: 'ford', wireM: 5000, reachM: 33_000 }
  const sentence = quotedSentence(
    { quoted: { net: 'crank', quotedM: 6400, wornAlong: { ...long, reachM: 8120 } } },
    say,
  )
  expect(sentence).toMatch(/^People quote less, about 6\.4 km between crank sets\./)
  expect(sentence).toMatch(/8\.1 km in the worst weather/)
  expect(quotedSentence({ quoted: null }, say)).toBe('')
  const part = (reachM: number) => ({
    ...({ part: 'wet', wireTempC: 5, verdict: 'works', check: bell } as const),
    reach: { factor: reachM / 5000, check: bell },
    along: { ...long, reachM },
  })
  expect(aloneSentences({ worstAlone: [part(22_000)], reachAlong: long }, say)).toEqual([
    'Wet: 22 km, then the bell at FORD fails.',
  ])
  expect(aloneSentences({ worstAlone: [part(33_000)], reachAlong: long }, say)).toEqual([])
})
