import { signal } from '@preact/signals'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { BUILT_IN } from '../../src/catalog/built-in'
import type { Tell } from '../../src/jobs/protocol'
import { EMPTY_PLAN, type Plan } from '../../src/plan/plan'
import { setWeather } from '../../src/plan/settings-edits'
import { moveStation } from '../../src/plan/station-edits'
import { type CircuitChoices, NO_CHOICES, searchChoices } from '../../src/state/choice-search'
import { searchRemedies } from '../../src/state/remedy-search'
import { createStore } from '../../src/state/store'
import { circuitWorkerHere } from '../jobs/worker-here'
import { FORD, HUT, NET, SMALL_PLAN } from '../panel/small-plan'

let atWork: ReturnType<typeof circuitWorkerHere>
beforeEach(() => {
  vi.useFakeTimers()
  atWork = circuitWorkerHere()
})
afterEach(() => {
  vi.useRealTimers()
  vi.unstubAllGlobals()
})
const stillness = () => vi.advanceTimersByTimeAsync(300)

test('choices are searched when the hand is still, and anew after an edit', async () => {
  const store = createStore(SMALL_PLAN)
  const choices = signal<CircuitChoices>(NO_CHOICES)
  const stop = searchChoices(store, NET, choices)
  expect(choices.value).toBe(NO_CHOICES)
  await stillness()
  const before = choices.value
  expect(before.wires.map(({ id }) => id)).toEqual(BUILT_IN.wires.map(({ id }) => id))
  expect(before.supplies).toEqual([])
  expect(before.way).toMatchObject({ from: HUT, to: FORD, wireM: store.report.value.lines[0]!.wireM })

  store.edit((plan) => setWeather(plan, 'wet'))
  expect(choices.value).toBe(NO_CHOICES)
  await stillness()
  const after = choices.value.wires[0]!
  expect(after.today.factor).toBeLessThan(before.wires[0]!.today.factor)
  stop()
  expect(atWork.atWork()).toBe(0)
})

test('nothing is searched while a hand moves', async () => {
  const store = createStore(SMALL_PLAN)
  const choices = signal<CircuitChoices>(NO_CHOICES)
  const stop = searchChoices(store, NET, choices)
  store.preview((plan) => moveStation(plan, FORD, [11.1, 47.01]))
  await stillness()
  expect(choices.value).toBe(NO_CHOICES)
  store.settle()
  await stillness()
  expect(choices.value.wires).not.toEqual([])
  stop()
})

test('remedies of what is amiss come from the same worker', async () => {
  const store = createStore(SMALL_PLAN)
  const stop = searchRemedies(store)
  // 40 km of field wire: no bell rings.
  store.edit((plan) => moveStation(plan, FORD, [11, 47.3]))
  await stillness()
  expect(store.remedies.value.get(NET)?.length).toBeGreaterThan(0)
  stop()
})

test('a search for remedies that fails says so, and the next edit searches anew', async () => {
  atWork = circuitWorkerHere({
    remedies: () => {
      throw new Error('a circuit without end')
    },
  })
  const store = createStore(SMALL_PLAN)
  const stop = searchRemedies(store)
  store.edit((plan) => moveStation(plan, FORD, [11, 47.3]))
  await stillness()
  expect(store.remedyFailure.value).toMatch(/^The search for remedies stopped .*a circuit without end/)
  expect(atWork.atWork()).toBe(0)
  store.edit((plan) => setWeather(plan, 'wet'))
  expect(store.remedyFailure.value).toBe('')
  stop()
})

test('what was found for another plan is dropped', async () => {
  let letGo: () => void = () => undefined
  const waiting = new Promise<void>((resolve) => {
    letGo = resolve
  })
  circuitWorkerHere({
    remedies: async (_question: unknown, tell: Tell<unknown>) => {
      await waiting
      tell.part({ circuit: NET, remedies: [{ what: 'for the long line' }] })
    },
    choices: async ({ plan }: { plan: Plan }, tell: Tell<unknown>) => {
      await waiting
      if (plan.stations.size === 0) return
      tell.part({ kind: 'longest-way', way: { from: HUT, to: FORD, wireM: 33_000 } })
    },
  })
  const store = createStore(SMALL_PLAN)
  const choices = signal<CircuitChoices>(NO_CHOICES)
  store.edit((plan) => moveStation(plan, FORD, [11, 47.3]))
  const stops = [searchRemedies(store), searchChoices(store, NET, choices)]
  await stillness()
  store.open({ ...EMPTY_PLAN })
  letGo()
  await stillness()
  expect(store.remedies.value.size).toBe(0)
  expect(choices.value).toBe(NO_CHOICES)
  for (const stop of stops) stop()
})
