import { signal } from '@preact/signals'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { BUILT_IN } from '../../src/catalog/built-in'
import { setWeather } from '../../src/plan/settings-edits'
import { moveStation } from '../../src/plan/station-edits'
import { type CircuitChoices, NO_CHOICES, searchChoices } from '../../src/state/choice-search'
import { searchRemedies } from '../../src/state/remedy-search'
import { createStore } from '../../src/state/store'
import { FORD, HUT, NET, SMALL_PLAN } from '../panel/small-plan'
import { circuitWorkerHere } from './circuit-worker-here'

let atWork: ReturnType<typeof circuitWorkerHere>
beforeEach(() => {
  vi.useFakeTimers()
  atWork = circuitWorkerHere()
})
afterEach(() => {
  vi.useRealTimers()
  vi.unstubAllGlobals()
})
const stillness = () => vi.advanceTimersByTime(300)

test('choices are searched when the hand is still, and anew after an edit', () => {
  const store = createStore(SMALL_PLAN)
  const choices = signal<CircuitChoices>(NO_CHOICES)
  const stop = searchChoices(store, NET, choices)
  expect(choices.value).toBe(NO_CHOICES)
  stillness()
  const before = choices.value
  expect(before.wires.map(({ id }) => id)).toEqual(BUILT_IN.wires.map(({ id }) => id))
  expect(before.supplies).toEqual([])
  expect(before.way).toMatchObject({ from: HUT, to: FORD, wireM: store.report.value.lines[0]!.wireM })

  store.edit((plan) => setWeather(plan, 'wet'))
  expect(choices.value).toBe(NO_CHOICES)
  stillness()
  const after = choices.value.wires[0]!
  expect(after.today.factor).toBeLessThan(before.wires[0]!.today.factor)
  stop()
  expect(atWork.size).toBe(0)
})

test('nothing is searched while a hand moves', () => {
  const store = createStore(SMALL_PLAN)
  const choices = signal<CircuitChoices>(NO_CHOICES)
  const stop = searchChoices(store, NET, choices)
  store.preview((plan) => moveStation(plan, FORD, [11.1, 47.01]))
  stillness()
  expect(choices.value).toBe(NO_CHOICES)
  store.settle()
  stillness()
  expect(choices.value.wires).not.toEqual([])
  stop()
})

test('remedies of what is amiss come from the same worker', () => {
  const store = createStore(SMALL_PLAN)
  const stop = searchRemedies(store)
  // 40 km of field wire: no bell rings.
  store.edit((plan) => moveStation(plan, FORD, [11, 47.3]))
  stillness()
  expect(store.remedies.value.get(NET)?.length).toBeGreaterThan(0)
  stop()
})
