import { expect, test } from 'vitest'
import { begin, commit, redo, undo } from '../../src/plan/history'
import { EMPTY_PLAN } from '../../src/plan/plan'
import { setTitle } from '../../src/plan/text-edits'

const titled = (title: string) => setTitle(EMPTY_PLAN, title)
const one = titled('one')
const two = titled('two')

test('undo gives back the very plan before, redo the one after', () => {
  const history = commit(commit(begin(EMPTY_PLAN), one), two)
  expect(undo(history).present).toBe(one)
  expect(undo(undo(history)).present).toBe(EMPTY_PLAN)
  expect(redo(undo(history))).toEqual(history)
  expect(redo(redo(undo(undo(history)))).present).toBe(two)
})

test('a change that changes nothing is no step', () => {
  const history = commit(begin(EMPTY_PLAN), one)
  expect(commit(history, one)).toBe(history)
  expect(commit(history, setTitle(one, 'one'))).toBe(history)
})

test('at either end of the history undo and redo change nothing', () => {
  const history = begin(one)
  expect(undo(history)).toBe(history)
  expect(redo(history)).toBe(history)
})

test('a new step after an undo forgets what was undone', () => {
  const history = commit(undo(commit(commit(begin(EMPTY_PLAN), one), two)), titled('three'))
  expect(history.future).toEqual([])
  expect(undo(history).present).toBe(one)
})

test('two hundred steps can be undone, and the oldest are forgotten first', () => {
  const plans = Array.from({ length: 250 }, (_, index) => titled(`plan ${index}`))
  let history = plans.reduce(commit, begin(EMPTY_PLAN))
  for (let k = 0; k < 300; k++) history = undo(history)
  expect(history.present).toBe(plans[49])
  for (let k = 0; k < 300; k++) history = redo(history)
  expect(history.present).toBe(plans[249])
})
