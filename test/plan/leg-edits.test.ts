import { expect, test } from 'vitest'
import {
  insertBend,
  moveBend,
  noteLeg,
  removeBend,
  setLays,
  setLegSag,
  setLegSlack,
} from '../../src/plan/leg-edits'
import { type Plan, verticesOf } from '../../src/plan/plan'
import { drawLine, drawnNet, l, mended, refusals } from './drawn-net'

const bent = () =>
  drawLine(drawnNet(), 'ab', [
    [10.002, 50.001],
    [10.006, 50.001],
  ])
const lineOf = (plan: Plan) => plan.lines.get(l('ab'))!

//  a ──0── o ──1── o ──2── b
test('a new bend lies in its leg, and both halves are laid as the leg was', () => {
  const overhead = setLays(mended(setLegSlack(bent(), l('ab'), 1, 7)), l('ab'), [1], 'overhead')
  const plan = insertBend(noteLeg(overhead, l('ab'), 1, 'poles 4 to 9'), l('ab'), 1, [10.004, 50.003])
  expect(lineOf(plan).legs).toEqual([
    { lay: 'surface' },
    { lay: 'overhead', slackPct: 7, note: 'poles 4 to 9' },
    { lay: 'overhead', slackPct: 7 },
    { lay: 'surface' },
  ])
  expect(verticesOf(plan, lineOf(plan))[2]).toEqual([10.004, 50.003])
})

test('a bend taken out again leaves the line as it was', () => {
  const plan = bent()
  expect(removeBend(insertBend(plan, l('ab'), 1, [10.004, 50.003]), l('ab'), 1)).toEqual(plan)
})

test('a bend that moves leaves the legs the objects that they were', () => {
  const plan = bent()
  const next = moveBend(plan, l('ab'), 0, [10.003, 50.002])
  expect(lineOf(next).bends[0]).toEqual([10.003, 50.002])
  expect(lineOf(next).bends[1]).toBe(lineOf(plan).bends[1])
  expect(lineOf(next).legs).toBe(lineOf(plan).legs)
})

test('several legs are laid at once, and a lay that they have changes nothing', () => {
  const plan = setLays(bent(), l('ab'), [0, 2], 'buried')
  expect(lineOf(plan).legs.map((leg) => leg.lay)).toEqual(['buried', 'surface', 'buried'])
  expect(setLays(plan, l('ab'), [0, 2], 'buried')).toBe(plan)
})

test('slack and sag of a leg are given back to the allowances when they are emptied', () => {
  const own = mended(setLegSag(mended(setLegSlack(bent(), l('ab'), 0, 12)), l('ab'), 0, 4))
  expect(lineOf(own).legs[0]).toEqual({ lay: 'surface', slackPct: 12, sagPct: 4 })
  const given = mended(setLegSag(mended(setLegSlack(own, l('ab'), 0, undefined)), l('ab'), 0, undefined))
  expect(given).toEqual(bent())
})

test.each([-1, 501, Number.NaN, Number.POSITIVE_INFINITY])(
  'a slack of %s %% is refused with a sentence',
  (slackPct) => {
    expect(refusals(setLegSlack(bent(), l('ab'), 0, slackPct))).toEqual([
      `The slack of a leg is ${slackPct}: give a number from 0 to 500 %.`,
    ])
  },
)

test('bends and legs that are not there change nothing', () => {
  const plan = bent()
  expect(insertBend(plan, l('ab'), 3, [10, 50])).toBe(plan)
  expect(moveBend(plan, l('ab'), 2, [10, 50])).toBe(plan)
  expect(removeBend(plan, l('ab'), 2)).toBe(plan)
  expect(mended(setLegSlack(plan, l('ab'), 3, 1))).toBe(plan)
  expect(noteLeg(plan, l('ab'), 0, '')).toBe(plan)
})

test('two legs that become one are laid as the first of them was, and the others stay as they were', () => {
  // a ──surface── o ──overhead── o ──buried── b
  const laid = setLays(setLays(bent(), l('ab'), [1], 'overhead'), l('ab'), [2], 'buried')
  expect(lineOf(removeBend(laid, l('ab'), 0)).legs.map(({ lay }) => lay)).toEqual(['surface', 'buried'])
  expect(lineOf(removeBend(laid, l('ab'), 1)).legs.map(({ lay }) => lay)).toEqual(['surface', 'overhead'])
})
