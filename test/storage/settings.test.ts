// @vitest-environment page
import { beforeEach, expect, test, vi } from 'vitest'
import { createStore } from '../../src/state/store'
import { keepSettings } from '../../src/storage/settings'

beforeEach(() => localStorage.clear())

test('units and theme come back in the next window', () => {
  const first = createStore()
  keepSettings(first)
  first.units.value = 'us'
  first.theme.value = 'dark'
  const second = createStore()
  keepSettings(second)
  expect([second.units.value, second.theme.value]).toEqual(['us', 'dark'])
  expect(document.documentElement.dataset.theme).toBe('dark')
})

test('the theme of the system leaves no mark on the page', () => {
  const store = createStore()
  keepSettings(store)
  store.theme.value = 'light'
  store.theme.value = 'system'
  expect(document.documentElement.dataset.theme).toBeUndefined()
})

test('a browser that forbids storage, or holds an unknown word, changes nothing', () => {
  localStorage.setItem('fieldpair-units', 'cubits')
  const store = createStore()
  keepSettings(store)
  expect(store.units.value).toBe('metric')
  vi.spyOn(Storage.prototype, 'getItem').mockImplementation(() => {
    throw new DOMException('no', 'SecurityError')
  })
  vi.spyOn(Storage.prototype, 'setItem').mockImplementation(() => {
    throw new DOMException('no', 'SecurityError')
  })
  const guarded = createStore()
  expect(() => keepSettings(guarded)).not.toThrow()
  vi.restoreAllMocks()
})
