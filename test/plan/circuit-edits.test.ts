import { expect, test } from 'vitest'
import {
  addCircuit,
  moveSupply,
  renameCircuit,
  setSet,
  setSupply,
  takeLineIn,
  takeLineOut,
} from '../../src/plan/circuit-edits'
import { setPairs } from '../../src/plan/line-edits'
import { c, circuitsIn, drawnNet, l, mended, refusals, s } from './drawn-net'

//  a ── b ── c     d ── e
test('a line taken out lies on without a circuit, and can be taken in again', () => {
  const plan = drawnNet('ab', 'bc')
  const out = takeLineOut(plan, c('c-ab'), l('bc'))
  expect(circuitsIn(out)).toEqual(['c-ab: ab'])
  expect(out.lines).toBe(plan.lines)
  expect(circuitsIn(mended(takeLineIn(out, c('c-ab'), l('bc'))))).toEqual(['c-ab: ab bc'])
})

test('a line whose pairs are all in use is refused, until it has one more', () => {
  const plan = drawnNet('ab', 'cd', 'bc')
  expect(refusals(takeLineIn(plan, c('c-cd'), l('bc')))).toEqual([
    'The one pair of B – C is in use: give the line another pair, or take it out of a circuit first.',
  ])
  const wider = mended(setPairs(plan, l('bc'), 2))
  expect(circuitsIn(mended(takeLineIn(wider, c('c-cd'), l('bc'))))).toEqual(['c-ab: ab bc', 'c-cd: cd bc'])
})

test('a line that does not touch the circuit is refused', () => {
  const plan = takeLineOut(drawnNet('ab', 'de'), c('c-de'), l('de'))
  expect(refusals(takeLineIn(plan, c('c-ab'), l('de')))).toEqual([
    'D – E does not touch A – B: take in the lines between them first.',
  ])
})

test('a line already in, or out, changes nothing', () => {
  const plan = drawnNet('ab', 'cd')
  expect(mended(takeLineIn(plan, c('c-ab'), l('ab')))).toBe(plan)
  expect(takeLineOut(plan, c('c-ab'), l('cd'))).toBe(plan)
})

test('a second circuit goes over the spare pairs of lines that meet', () => {
  const plan = mended(setPairs(mended(setPairs(drawnNet('ab', 'bc', 'de'), l('ab'), 2)), l('bc'), 2))
  const both = mended(addCircuit(plan, { id: c('second'), lines: [l('ab'), l('bc')] }))
  expect(circuitsIn(both)).toEqual(['c-ab: ab bc', 'c-de: de', 'second: ab bc'])
  expect(refusals(addCircuit(both, { id: c('third'), lines: [l('ab')] }))).toHaveLength(1)
  const loose = takeLineOut(plan, c('c-de'), l('de'))
  expect(refusals(addCircuit(loose, { id: c('third'), lines: [l('ab'), l('de')] }))).toEqual([
    'These lines do not meet: pick lines that lead from one to the next.',
  ])
  expect(refusals(addCircuit(plan, { id: c('third'), lines: [] }))).toHaveLength(1)
})

test('a set stands at a station of the circuit, is changed there and taken away', () => {
  const plan = drawnNet('ab', 'bc')
  const one = setSet(plan, c('c-ab'), s('b'), 'crank-1600')
  expect(one.circuits.get(c('c-ab'))?.sets).toEqual(new Map([['b', 'crank-1600']]))
  expect(setSet(one, c('c-ab'), s('b'), 'crank-1600')).toBe(one)
  expect(setSet(one, c('c-ab'), s('b'), null)).toEqual(plan)
  expect(setSet(plan, c('c-ab'), s('d'), 'crank-1600')).toBe(plan)
  expect(setSet(plan, c('c-ab'), s('b'), 'horn')).toBe(plan)
  expect(setSet(plan, c('c-ab'), s('b'), null)).toBe(plan)
})

test('a supply stands at a station of the circuit, moves to another and is taken away', () => {
  const plan = drawnNet('ab', 'bc')
  const fed = setSupply(plan, c('c-ab'), { type: 'feed-48', at: s('a') })
  expect(fed.circuits.get(c('c-ab'))?.supply).toEqual({ type: 'feed-48', at: 'a' })
  expect(moveSupply(fed, c('c-ab'), s('c')).circuits.get(c('c-ab'))?.supply?.at).toBe('c')
  expect(moveSupply(fed, c('c-ab'), s('a'))).toBe(fed)
  expect(moveSupply(fed, c('c-ab'), s('f'))).toBe(fed)
  expect(moveSupply(plan, c('c-ab'), s('a'))).toBe(plan)
  expect(setSupply(fed, c('c-ab'), null)).toEqual(plan)
  expect(setSupply(plan, c('c-ab'), null)).toBe(plan)
})

test('a circuit is renamed, and keeps its lines', () => {
  const plan = renameCircuit(drawnNet('ab'), c('c-ab'), 'Camp net')
  expect(plan.circuits.get(c('c-ab'))).toMatchObject({ name: 'Camp net', lines: ['ab'] })
  expect(renameCircuit(plan, c('c-ab'), 'Camp net')).toBe(plan)
})
