// @vitest-environment page
import { act } from 'preact/test-utils'
import { afterAll, describe, expect, test, vi } from 'vitest'
import { Panel } from '../../../src/panel/panel'
import type { Selection } from '../../../src/state/selection'
import { createStore } from '../../../src/state/store'
import { formatHours } from '../../../src/words/work-words'
import { page } from '../page'
import { LINE, SMALL_PLAN } from '../small-plan'

async function show(selection: Selection = null) {
  const store = createStore(SMALL_PLAN)
  store.selection.value = selection
  const shown = page(<Panel store={store} />)
  await act(() => vi.dynamicImportSettled())
  return { store, ...shown }
}
afterAll(() => vi.dynamicImportSettled())

test.each([
  [0.01, '1 min'],
  [0.5, '30 min'],
  [0.999, '1 h'],
  [5.16, '5 h 10 min'],
  [3, '3 h'],
])('%f hours are said as %s', (hours, words) => expect(formatHours(hours)).toBe(words))

describe('how long it takes', () => {
  test('is said first for a crew of four, and for the crews and the night that a person sets', async () => {
    const { store, text, give, control } = await show()
    const before = store.report.value.hours.totalH
    expect(text()).toMatch(/One crew of four lays it in .* by day; recovery/)
    give('Number of crews', '2')
    expect(text()).toMatch(/Two crews of four lay it in/)
    give('Number of crews', '1')
    act(() => {
      const night = control('By night')
      night.checked = true
      night.dispatchEvent(new Event('change', { bubbles: true }))
    })
    expect(text()).toContain('by night')
    expect(store.report.value.hours.totalH).toBeCloseTo(before * 1.5, 9)
    expect(store.plan.value.work).toEqual({ night: 1 })
  })

  test('takes the rates by vehicle and back on foot, and keeps in the plan only what differs', async () => {
    const { store, press, openAll } = await show()
    openAll()
    press('Take the rates by vehicle')
    expect(store.plan.value.work).toMatchObject({ surfaceKmPerHour: 7, recoveryKmPerHour: 12 })
    press('Take the rates on foot')
    expect(store.plan.value.work).toBeUndefined()
  })
})

test('a lower limit for one person makes more loads', async () => {
  const { store, give } = await show()
  const before = store.report.value.loads.personLoads
  give('Most for one person', '5')
  expect(store.report.value.loads.personLoads).toBeGreaterThan(before)
})

test('the card of a line lists each of its tags with its running distance', async () => {
  const { store, all, openAll, text } = await show({ kind: 'line', id: LINE, legs: [] })
  openAll()
  const { tags } = store.report.value.lines[0]!
  expect(all('.tag-list li')).toHaveLength(tags.length)
  const said = all('.tag-list li').map((item) => item.textContent)
  expect(said[0]).toContain('Hut')
  expect(said.at(-1)).toContain('Ford')
  expect(text()).toContain('for one crew of 4')
})
