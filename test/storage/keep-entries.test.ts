// @vitest-environment page
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { BUILT_IN } from '../../src/catalog/built-in'
import { NO_ENTRIES, withKept } from '../../src/plan/kept-entries'
import { createStore } from '../../src/state/store'
import { keepEntries } from '../../src/storage/keep-entries'

const ours = { ...BUILT_IN.wires[0]!, id: 'ours', name: 'Our reel', spread: { loopOhmPerKm: 2 } }
const stops: (() => void)[] = []
function aWindow() {
  const store = createStore()
  stops.push(keepEntries(store))
  return store
}
beforeEach(() => localStorage.clear())
afterEach(() => {
  vi.unstubAllGlobals()
  for (const stop of stops.splice(0)) stop()
})

test('an entry that is kept comes back in the next window, with its spread, and can be forgotten', () => {
  aWindow().keptEntries.value = withKept(NO_ENTRIES, 'wires', ours)
  const second = aWindow()
  expect(second.keptEntries.value.wires).toEqual([ours])
  expect(second.choices.wires.value.at(-1)).toEqual(ours)
  second.keptEntries.value = NO_ENTRIES
  expect(aWindow().keptEntries.value.wires).toEqual([])
})

test('another window that is open hears of it', () => {
  const [first, second] = [aWindow(), aWindow()]
  first.keptEntries.value = withKept(NO_ENTRIES, 'wires', ours)
  const [key] = Object.keys(localStorage)
  dispatchEvent(new StorageEvent('storage', { key: key! }))
  expect(second.keptEntries.value.wires).toEqual([ours])
})

test('no room is told, and the entry is offered as long as the page is open', () => {
  const store = aWindow()
  const real = localStorage
  const full = {
    getItem: (name: string) => real.getItem(name),
    setItem: () => {
      throw new DOMException('no', 'QuotaExceededError')
    },
  }
  vi.stubGlobal('localStorage', full)
  store.keptEntries.value = withKept(NO_ENTRIES, 'wires', ours)
  expect(store.keptEntriesFailure.value).toContain('could not keep it for other plans')
  expect(store.choices.wires.value.at(-1)).toEqual(ours)
  vi.unstubAllGlobals()
  store.keptEntries.value = withKept(store.keptEntries.value, 'wires', { ...ours, name: 'Another' })
  expect(store.keptEntriesFailure.value).toBe('')
})

test('what cannot be read is told, and put aside rather than written over', () => {
  aWindow().keptEntries.value = withKept(NO_ENTRIES, 'wires', ours)
  const [key] = Object.keys(localStorage)
  const torn = localStorage.getItem(key!)!.slice(0, 200)
  localStorage.setItem(key!, torn)
  const store = aWindow()
  expect(store.keptEntries.value).toEqual(NO_ENTRIES)
  expect(store.keptEntriesFailure.value).toContain('cannot be read here')
  store.keptEntries.value = withKept(NO_ENTRIES, 'wires', ours)
  expect(Object.values({ ...localStorage })).toContain(torn)
  expect(aWindow().keptEntries.value.wires).toEqual([ours])
})
