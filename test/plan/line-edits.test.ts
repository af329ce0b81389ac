import { expect, test } from 'vitest'
import { addCircuit, setSet, setSupply, takeLineOut } from '../../src/plan/circuit-edits'
import { removeLine, reverseLine, setPairs, setReturn, setWire } from '../../src/plan/line-edits'
import { c, circuitsIn, drawLine, drawnNet, l, mended, refusals, s } from './drawn-net'

//  a ── b ── c
test('a line from a station with one circuit joins that circuit', () => {
  expect(circuitsIn(drawnNet('ab', 'bc'))).toEqual(['c-ab: ab bc'])
})

test('a line to a station with one circuit joins that circuit where its start has none', () => {
  expect(circuitsIn(drawnNet('ab', 'cb'))).toEqual(['c-ab: ab cb'])
})

test('where both ends have a circuit, the one at the start is joined', () => {
  expect(circuitsIn(drawnNet('ab', 'cd', 'bc'))).toEqual(['c-ab: ab bc', 'c-cd: cd'])
})

//  a ══ b ── c     two circuits over ab
test('a line from a station with two circuits starts one of its own, named after its stations', () => {
  const twoPairs = mended(setPairs(drawnNet('ab'), l('ab'), 2))
  const both = mended(addCircuit(twoPairs, { id: c('second'), lines: [l('ab')] }))
  const plan = drawLine(both, 'bc')
  expect(circuitsIn(plan)).toEqual(['c-ab: ab', 'second: ab', 'c-bc: bc'])
  expect(plan.circuits.get(c('c-bc'))?.name).toBe('B – C')
})

test('a line has a leg more than bends, all laid alike', () => {
  const line = drawLine(drawnNet(), 'ab', [
    [10.002, 50.001],
    [10.004, 50.001],
  ]).lines.get(l('ab'))
  expect(line?.legs).toEqual([{ lay: 'surface' }, { lay: 'surface' }, { lay: 'surface' }])
})

test('a line from a station to itself, or to none, draws nothing', () => {
  const plan = drawnNet('ab')
  expect(drawLine(plan, 'aa')).toBe(plan)
  expect(drawLine(plan, 'az')).toBe(plan)
})

//  a ── b ── c ── d ── e     cd goes; the supply stands at e
test('a circuit that falls apart stays with its supply, and the other piece gets an id and a name of its own', () => {
  const net = drawnNet('ab', 'bc', 'cd', 'de')
  const sets = setSet(setSet(net, c('c-ab'), s('a'), 'crank-1600'), c('c-ab'), s('e'), 'crank-2500')
  const plan = removeLine(setSupply(sets, c('c-ab'), { type: 'feed-48', at: s('e') }), l('cd'))
  expect(circuitsIn(plan)).toEqual(['c-ab-2: ab bc', 'c-ab: de'])
  expect(plan.circuits.get(c('c-ab'))).toMatchObject({
    name: 'A – B',
    sets: new Map([['e', 'crank-2500']]),
    supply: { type: 'feed-48', at: 'e' },
  })
  expect(plan.circuits.get(c('c-ab-2'))).toMatchObject({
    name: 'A – B 2',
    sets: new Map([['a', 'crank-1600']]),
    supply: null,
  })
})

test('with no supply, the piece with the first line stays the circuit that it was', () => {
  expect(circuitsIn(removeLine(drawnNet('ab', 'bc', 'cd'), l('bc')))).toEqual(['c-ab: ab', 'c-ab-2: cd'])
})

//  a ── b ── c ── d ── e ── f, cut twice
test('the id of a piece is one that no circuit has', () => {
  const once = removeLine(drawnNet('ab', 'bc', 'cd', 'de', 'ef'), l('bc'))
  expect(circuitsIn(removeLine(once, l('de')))).toEqual(['c-ab: ab', 'c-ab-2: cd', 'c-ab-2-2: ef'])
  const twice = takeLineOut(drawnNet('ab', 'bc', 'cd', 'de', 'ef'), c('c-ab'), l('de'))
  expect(circuitsIn(removeLine(twice, l('bc')))).toEqual(['c-ab: ab', 'c-ab-3: cd', 'c-ab-2: ef'])
})

//  a ── b ── c ── a
test('a ring that loses a line stays one circuit', () => {
  expect(circuitsIn(removeLine(drawnNet('ab', 'bc', 'ca'), l('bc')))).toEqual(['c-ab: ab ca'])
})

test('a circuit goes with its last line', () => {
  const plan = removeLine(setSet(drawnNet('ab'), c('c-ab'), s('a'), 'crank-1600'), l('ab'))
  expect(circuitsIn(plan)).toEqual([])
  expect(plan.lines.size).toBe(0)
})

test('the pairs of a line are never fewer than the circuits on it', () => {
  const plan = mended(setPairs(drawnNet('ab'), l('ab'), 2))
  const both = mended(addCircuit(plan, { id: c('second'), lines: [l('ab')] }))
  expect(refusals(setPairs(both, l('ab'), 1))).toEqual([
    'A – B carries 2 circuits: take one out of it before it has one pair.',
  ])
  expect(refusals(setPairs(plan, l('ab'), 0))).toHaveLength(1)
  expect(refusals(setPairs(plan, l('ab'), 1.5))).toHaveLength(1)
  expect(setPairs(plan, l('ab'), 2)).toEqual({ ok: true, value: plan })
})

test('an earth return has two electrodes, and remembers them while it is a pair', () => {
  const earth = mended(setReturn(drawnNet('ab'), l('ab'), 'earth', [60, 80]))
  const pair = mended(setReturn(earth, l('ab'), 'pair'))
  const again = mended(setReturn(pair, l('ab'), 'earth'))
  expect(again.lines.get(l('ab'))).toMatchObject({ return: 'earth', electrodeOhms: [60, 80] })
  expect(mended(setReturn(again, l('ab'), 'earth', [60, 80]))).toBe(again)
  expect(refusals(setReturn(again, l('ab'), 'earth', [60, -1]))).toHaveLength(1)
  expect(mended(setReturn(drawnNet('ab'), l('ab'), 'earth')).lines.get(l('ab'))?.electrodeOhms).toHaveLength(
    2,
  )
})

test('a wire that no catalog has is not put in', () => {
  const plan = drawnNet('ab')
  expect(setWire(plan, l('ab'), 'silk')).toBe(plan)
  expect(setWire(plan, l('ab'), 'wd-1a')).toBe(plan)
  expect(setWire(plan, l('ab'), 'wd-36').lines.get(l('ab'))?.wire).toBe('wd-36')
})

test('a line turned round twice is the line that it was', () => {
  const earth = mended(setReturn(drawLine(drawnNet(), 'ab', [[10.005, 50.002]]), l('ab'), 'earth', [60, 80]))
  const turned = reverseLine(earth, l('ab'))
  expect(turned.lines.get(l('ab'))).toMatchObject({ from: 'b', to: 'a', electrodeOhms: [80, 60] })
  expect(reverseLine(turned, l('ab'))).toEqual(earth)
})
