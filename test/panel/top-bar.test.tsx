// @vitest-environment page
import { act } from 'preact/test-utils'
import { afterEach, describe, expect, test } from 'vitest'
import { KeptPlans } from '../../src/panel/bar/kept-plans'
import { Menu } from '../../src/panel/bar/menu'
import { PlanChoices } from '../../src/panel/bar/plan-choices'
import { followShortcuts } from '../../src/panel/bar/shortcuts'
import { ProblemList } from '../../src/panel/problem-list'
import { TopBar } from '../../src/panel/top-bar'
import { setTitle } from '../../src/plan/text-edits'
import { createStore } from '../../src/state/store'
import type { Keeper } from '../../src/storage/keeper'
import { page } from './page'
import { SMALL_PLAN } from './small-plan'

const ENTRY = {
  key: 'k1',
  revision: 3,
  title: 'Ridge net',
  savedAt: new Date(0),
  order: 1,
  isRemoved: false,
  fault: '' as const,
}
const KEEPER: Keeper = {
  list: async () => [ENTRY],
  open: async () => {},
  remove: async () => {},
  bringBack: async () => {},
  erase: async () => {},
  textOf: async () => '',
  versions: async () => [],
  versionPlans: async () => [],
  allKept: async () => ({ plans: [], versions: [] }),
  takeIn: async () => ({ plans: 0, versions: 0, known: 0, unreadable: 0 }),
  keepVersion: async () => {},
  bringBackVersion: async () => {},
  openKey: () => null,
  openDoc: () => 'doc',
  shareDraft: () => undefined,
  planOf: async () => undefined,
  rename: async () => {},
  keepAside: async () => true,
  removeVersion: async () => async () => {},
  flush: async () => {},
  stop: () => {},
}

function show() {
  const store = createStore(SMALL_PLAN)
  const bar = <TopBar store={store} keeper={KEEPER} onDemo={() => {}} onPapers={() => {}} />
  return { store, ...page(bar) }
}

// happy-dom knows no popovers; Chromium's are tried in the browser tests.
HTMLElement.prototype.hidePopover ??= () => {}

let stop = () => {}
afterEach(() => stop())

describe('the bar', () => {
  test('says which tool is in hand, and takes another', () => {
    const { store, press, all } = show()
    press('Line')
    expect(store.tool.value).toBe('line')
    const pressed = all('.tools [aria-pressed="true"]').map((button) => button.textContent)
    expect(pressed).toEqual(['Line'])
  })

  test('changes the title, and goes back and forth', () => {
    const { store, root, all } = show()
    const [back, forth] = all<HTMLButtonElement>('.history button')
    expect(back?.disabled).toBe(true)
    const title = root.querySelector<HTMLInputElement>('.title')!
    act(() => {
      title.value = 'Three huts'
      title.dispatchEvent(new Event('change', { bubbles: true }))
    })
    expect(store.plan.value.title).toBe('Three huts')
    act(() => back?.click())
    expect(store.plan.value).toBe(SMALL_PLAN)
    act(() => forth?.click())
    expect(store.plan.value.title).toBe('Three huts')
  })

  test('shows in US units and in the dark where the person asks', () => {
    const { store, press } = show()
    press('US')
    press('Dark')
    expect([store.units.value, store.theme.value]).toEqual(['us', 'dark'])
  })

  test('starts a new plan, with nothing to undo', () => {
    const store = createStore(SMALL_PLAN)
    const choices = <PlanChoices store={store} keeper={KEEPER} onDemo={() => {}} openings={1} />
    const { press } = page(<Menu title="Plans" hint="Plans" children={choices} />)
    act(() => store.edit((plan) => setTitle(plan, 'Changed')))
    press('New plan')
    expect([store.plan.value.title, store.canUndo.value]).toEqual(['New plan', false])
  })
})

describe('the plans kept in this browser', () => {
  /** Opens the list over a keeper that remembers what it was asked to do. */
  async function open(list = [ENTRY]) {
    const asked: string[] = []
    const keeper: Keeper = {
      ...KEEPER,
      list: async () => list,
      remove: async (key) => void asked.push(`remove ${key}`),
      bringBack: async (key) => void asked.push(`bring back ${key}`),
      erase: async (key) => void asked.push(`erase ${key}`),
    }
    const shown = page(<KeptPlans store={createStore(SMALL_PLAN)} keeper={keeper} />)
    await act(async () => {
      await new Promise((resolve) => setTimeout(resolve))
    })
    return { asked, ...shown }
  }

  test('are removed at a press, with the way back in the same place: a double click loses nothing', async () => {
    const { asked, all, press, text } = await open()
    const atTheRight = () =>
      all('.plan-card:not(.open) > :last-child').at(-1)!.querySelector<HTMLElement>(':scope > :last-child') ??
      all('.gone > :last-child')[0]!
    act(() => atTheRight().click())
    act(() => atTheRight().click())
    expect(asked).toEqual(['remove k1'])
    press('Undo: keep Ridge net')
    expect(asked).toEqual(['remove k1', 'bring back k1'])
    expect(text()).not.toContain('removed')
  })

  test('are erased only from among the removed, and only at the second press', async () => {
    const { asked, all, openAll, text } = await open([{ ...ENTRY, isRemoved: true }])
    expect(text()).toContain('1 removed plan')
    openAll()
    const erase = () => all<HTMLButtonElement>('.rows button.harm')[0]!
    act(() => erase().click())
    expect(asked).toEqual([])
    await act(async () => erase().click())
    expect(asked).toEqual(['erase k1'])
  })

  test('that cannot be read are offered as text', async () => {
    const { all } = await open([{ ...ENTRY, fault: 'no plan' as never }])
    expect(all('[aria-label="Save the text of Ridge net"]')).toHaveLength(1)
  })
})

describe('keys', () => {
  const key = (init: KeyboardEventInit, target: EventTarget = document.body) =>
    act(() => {
      target.dispatchEvent(new KeyboardEvent('keydown', { bubbles: true, cancelable: true, ...init }))
    })

  test('digits take tools, and Ctrl Z goes back', () => {
    const { store } = show()
    stop = followShortcuts(store, () => false)
    key({ key: '2' })
    expect(store.tool.value).toBe('station')
    act(() => store.edit((plan) => setTitle(plan, 'Changed')))
    key({ key: 'z', ctrlKey: true })
    expect(store.plan.value).toBe(SMALL_PLAN)
    key({ key: 'Z', ctrlKey: true, shiftKey: true })
    expect(store.plan.value.title).toBe('Changed')
  })

  test('nothing is undone while the papers lie over the plan', () => {
    const { store } = show()
    stop = followShortcuts(store, () => true)
    act(() => store.edit((plan) => setTitle(plan, 'Changed')))
    key({ key: 'z', ctrlKey: true })
    key({ key: '2' })
    expect(store.plan.value.title).toBe('Changed')
    expect(store.tool.value).toBe('select')
  })

  test('keys that go into text stay there', () => {
    const { store, root } = show()
    stop = followShortcuts(store, () => false)
    key({ key: '2' }, root.querySelector('.title')!)
    expect(store.tool.value).toBe('select')
  })
})

describe('a refused file', () => {
  test('is told with every fault, its place and what to do, and goes away when read', () => {
    const store = createStore(SMALL_PLAN)
    const { text, press } = page(<ProblemList store={store} />)
    act(() => {
      store.refusedFile.value = {
        name: 'camp.plan.geojson',
        problems: [
          { code: 'missing', at: 'features[3].properties.wire', message: 'The wire is missing: give an id.' },
          { code: 'wrong', at: 'plan.version', message: 'The version is 9: give 1.' },
        ],
      }
    })
    expect(text()).toContain('camp.plan.geojson was not opened')
    expect(text()).toContain('2 faults found')
    expect(text()).toContain('features[3].properties.wire The wire is missing: give an id.')
    press('Close')
    expect(store.refusedFile.value).toBeNull()
    expect(text()).toBe('')
  })
})
