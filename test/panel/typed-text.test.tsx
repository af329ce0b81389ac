// @vitest-environment page
import { act } from 'preact/test-utils'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { StationCard } from '../../src/panel/station-card'
// What the card loads when it is shown: it must not come when the test is over.
import '../../src/panel/ground/how-far'
import '../../src/panel/ground/route-from'
import { createStore } from '../../src/state/store'
import { tellLeaving } from '../../src/storage/keeper'
import { page } from './page'
import { HUT, SMALL_PLAN } from './small-plan'

function show() {
  const store = createStore(SMALL_PLAN)
  const shown = page(<StationCard store={store} id={HUT} />)
  const type = (name: string, text: string) =>
    act(() => {
      const field = shown.control(name)
      field.value = text
      field.dispatchEvent(new Event('input', { bubbles: true }))
    })
  const key = (name: string, key: string) =>
    act(() => void shown.control(name).dispatchEvent(new KeyboardEvent('keydown', { bubbles: true, key })))
  const leave = (name: string) => act(() => void shown.control(name).dispatchEvent(new Event('blur')))
  return { store, type, key, leave, hut: () => store.plan.value.stations.get(HUT)!, ...shown }
}
const pass = (ms: number) => act(() => void vi.advanceTimersByTime(ms))

beforeEach(() => {
  vi.useFakeTimers()
})
afterEach(() => {
  vi.useRealTimers()
})

describe('text as it is typed', () => {
  test('is in the plan within a second, though the hand never pauses and never leaves the field', () => {
    const { type, hut } = show()
    let text = ''
    for (const letter of 'a bog to the north of it') {
      text += letter
      type('Note', text)
      pass(100)
    }
    // What was typed in the last half second may still be on its way.
    expect(text.startsWith(hut().note)).toBe(true)
    expect(hut().note.length).toBeGreaterThanOrEqual(text.length - 6)
    pass(600)
    expect(hut().note).toBe(text)
  })

  test('is not given once more when the hand leaves the field: another may have changed it since', () => {
    const { store, type, leave, hut, control } = show()
    type('Note', 'a bog')
    pass(600)
    const stations = new Map(store.plan.value.stations).set(HUT, { ...hut(), note: 'a lake' })
    act(() => store.absorb({ ...store.plan.value, stations }, (past) => past))
    act(() => void control('Note').dispatchEvent(new Event('change', { bubbles: true })))
    leave('Note')
    expect(hut().note).toBe('a lake')
    expect(control('Note').value).toBe('a lake')
  })

  test('is one step of undo, however often it was kept', () => {
    const { store, type, leave, hut } = show()
    for (const text of ['a', 'a bo', 'a bog']) {
      type('Note', text)
      pass(600)
    }
    leave('Note')
    expect(hut().note).toBe('a bog')
    store.undo()
    expect(store.plan.value).toBe(SMALL_PLAN)
    expect(store.canUndo.value).toBe(false)
  })

  test('makes no step where it ends as it began', () => {
    const { store, type, leave } = show()
    type('Note', 'a bog')
    pass(600)
    type('Note', SMALL_PLAN.stations.get(HUT)!.note)
    pass(600)
    leave('Note')
    expect(store.canUndo.value).toBe(false)
  })

  test('does not swallow what came between from elsewhere', () => {
    const { store, type, hut } = show()
    type('Note', 'a')
    pass(600)
    act(() => store.edit((plan) => ({ ...plan, weather: 'wet' })))
    type('Note', 'a bog')
    pass(600)
    store.undo()
    expect([hut().note, store.plan.value.weather]).toEqual(['a', 'wet'])
  })

  test('goes back with Escape to what was there before the first letter', () => {
    const { store, type, key, control } = show()
    type('Note', 'a bog')
    pass(600)
    key('Note', 'Escape')
    expect(store.plan.value).toBe(SMALL_PLAN)
    expect(control('Note').value).toBe(SMALL_PLAN.stations.get(HUT)!.note)
  })

  test('is kept when the page goes away, or the card does', () => {
    const { type, hut, root } = show()
    type('Note', 'a bog')
    act(() => void tellLeaving())
    expect(hut().note).toBe('a bog')
    type('Note', 'a bog, and a spring')
    page(<p />)
    expect(root.isConnected).toBe(false)
    expect(hut().note).toBe('a bog, and a spring')
  })
})

describe('a place as it is typed', () => {
  test('is taken when the hand pauses, and what cannot be is refused only when it leaves', () => {
    const { type, leave, hut, refusals } = show()
    const before = hut().position
    for (const text of ['4', '47.1 1', '47.1 11', '47.2 11.5']) {
      type('Place', text)
      pass(200)
      expect(hut().position).toBe(before)
    }
    pass(600)
    expect(hut().position).toEqual([11.5, 47.2])
    type('Place', '472 11')
    pass(600)
    expect([hut().position[1], refusals()]).toEqual([47.2, []])
    leave('Place')
    expect(hut().position[1]).toBe(47.2)
  })
})
