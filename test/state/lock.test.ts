import { expect, test } from 'vitest'
import { setTitle } from '../../src/plan/text-edits'
import { createStore } from '../../src/state/store'
import { SMALL_PLAN } from '../panel/small-plan'

test('under the lock nothing changes a plan, and each try is told with the way to unlock', () => {
  const store = createStore(SMALL_PLAN)
  store.edit((plan) => setTitle(plan, 'Before'))
  const before = store.plan.value
  store.locked.value = true
  const retitle = () => store.edit((plan) => setTitle(plan, 'Changed'))
  for (const attempt of [
    retitle,
    store.undo,
    store.redo,
    () => store.preview((plan) => setTitle(plan, 'Dragged')),
  ]) {
    attempt()
    store.settle()
    expect(store.plan.value).toBe(before)
  }
  expect(store.mayEdit()).toBe(false)
  store.deed.value!.back.act()
  expect(store.mayEdit()).toBe(true)
  retitle()
  expect(store.plan.value.title).toBe('Changed')
})

test('undo takes back what is told before it touches the history', () => {
  const store = createStore(SMALL_PLAN)
  store.edit((plan) => setTitle(plan, 'Before'))
  let carriedOn = 0
  store.tell('Put aside', { words: 'Carry on', act: () => carriedOn++ })
  store.undo()
  expect([carriedOn, store.plan.value.title]).toEqual([1, 'Before'])
  store.undo()
  expect(store.plan.value).toBe(SMALL_PLAN)
})
