// @vitest-environment page
import 'fake-indexeddb/auto'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { formatPlan } from '../../src/files/format-plan'
import { EMPTY_PLAN, type Plan } from '../../src/plan/plan'
import { setTitle } from '../../src/plan/text-edits'
import { createStore, type Store } from '../../src/state/store'
import { openDrafts } from '../../src/storage/drafts'
import { keepDrafts } from '../../src/storage/keep-drafts'
import type { Keeper } from '../../src/storage/keeper'
import { NOTICES } from '../../src/storage/keeping-notices'

/** Each test has a browser of its own. */
let browser = 0
const keepers: Keeper[] = []

/** A window of the same browser, as one that is opened anew: it remembers nothing of its own. */
async function openWindow(): Promise<{ store: Store; keeper: Keeper }> {
  sessionStorage.clear()
  return reopenWindow()
}

/** A window after a reload. */
async function reopenWindow(): Promise<{ store: Store; keeper: Keeper }> {
  const store = createStore()
  const keeper = await keepDrafts(store, `browser-${browser}`)
  keepers.push(keeper)
  return { store, keeper }
}

/** The clock that orders drafts ticks in milliseconds. */
const tick = () => new Promise((done) => setTimeout(done, 2))
const title = (text: string) => (plan: Plan) => setTitle(plan, text)
const entries = async (keeper: Keeper) => (await keeper.list()) ?? []
const titles = async (keeper: Keeper) =>
  (await entries(keeper)).filter(({ isRemoved }) => !isRemoved).map((draft) => draft.title)
const keyOf = async (keeper: Keeper, wanted: string) =>
  (await entries(keeper)).find((draft) => draft.title === wanted)!.key
/** Writes a record past the program, as a fault of the disk or another program would. */
async function plant(record: object) {
  const { openDB } = await import('idb')
  const db = await openDB(`browser-${browser}`)
  await db.put('drafts', record)
  db.close()
}

beforeEach(() => {
  browser++
})
afterEach(() => {
  for (const keeper of keepers.splice(0)) keeper.stop()
  vi.restoreAllMocks()
})

describe('a plan kept in the browser', () => {
  test('is on disk within a second of an edit, with nobody asking', async () => {
    const { store } = await openWindow()
    store.edit(title('Ridge net'))
    await new Promise((done) => setTimeout(done, 900))
    const drafts = await openDrafts(`browser-${browser}`)
    expect((await drafts.list()).map((draft) => draft.title)).toEqual(['Ridge net'])
    drafts.close()
  })

  test('is written when the page goes away, without waiting', async () => {
    const { store, keeper } = await openWindow()
    store.edit(title('Ridge net'))
    dispatchEvent(new Event('pagehide'))
    expect(await titles(keeper)).toEqual(['Ridge net'])
  })

  test('is one plan in the list although the page went away in the midst of a save', async () => {
    const first = await openWindow()
    first.store.edit(title('Before'))
    await first.keeper.flush()
    const drafts = await openDrafts(`browser-${browser}`)
    const [before] = await drafts.list()
    await tick()
    await drafts.save({
      plan: { ...EMPTY_PLAN, title: 'After' },
      state: { key: 'next', revision: 1 },
      doc: 'doc',
      base: before!,
    })
    drafts.close()
    const later = await openWindow()
    expect(later.store.plan.value.title).toBe('After')
    expect(await titles(later.keeper)).toEqual(['After'])
  })

  test('comes back after a reload, and after a crash in a window of its own', async () => {
    const { store, keeper } = await openWindow()
    store.edit(title('Ridge net'))
    await keeper.flush()
    expect((await reopenWindow()).store.plan.value.title).toBe('Ridge net')
    expect((await openWindow()).store.plan.value.title).toBe('Ridge net')
  })

  test('stays one plan in the list over many reloads and edits', async () => {
    for (const text of ['One', 'Two', 'Three']) {
      const { store, keeper } = await reopenWindow()
      store.edit(title(text))
      await keeper.flush()
    }
    expect(await titles((await openWindow()).keeper)).toEqual(['Three'])
  })

  test('stands beside the one opened after it, and each can be opened and removed', async () => {
    const { store, keeper } = await openWindow()
    store.edit(title('First'))
    await keeper.flush()
    await tick()
    store.open({ ...EMPTY_PLAN })
    store.edit(title('Second'))
    await keeper.flush()
    expect(await titles(keeper)).toEqual(['Second', 'First'])

    await keeper.open(await keyOf(keeper, 'First'))
    expect(store.plan.value.title).toBe('First')
    expect(store.canUndo.value).toBe(false)

    await keeper.remove(await keyOf(keeper, 'Second'))
    expect(await titles(keeper)).toEqual(['First'])
  })

  test('leaves nothing behind that was opened, looked at and left', async () => {
    const { store, keeper } = await openWindow()
    store.open({ ...EMPTY_PLAN, title: 'Demo' })
    await keeper.flush()
    expect(await titles(keeper)).toEqual(['Demo'])
    store.open({ ...EMPTY_PLAN, title: 'Mine' })
    await keeper.flush()
    expect(await titles(keeper)).toEqual(['Mine'])
  })
})

describe('one plan in two windows', () => {
  test('is never overwritten: both ways it went are kept, and both windows are told', async () => {
    const first = await openWindow()
    first.store.edit(title('Start'))
    await first.keeper.flush()
    const second = await openWindow()
    expect(second.store.plan.value.title).toBe('Start')

    first.store.edit(title('Left'))
    await first.keeper.flush()
    second.store.edit(title('Right'))
    await second.keeper.flush()

    expect((await titles(second.keeper)).sort()).toEqual(['Left', 'Right'])
    expect(second.store.notice.value).toBe(NOTICES.parted)
    await vi.waitFor(() => expect(first.store.notice.value).toBe(NOTICES.parted))
  })

  test('is kept twice when the first window goes on after the second has taken it over', async () => {
    const first = await openWindow()
    first.store.edit(title('Start'))
    await first.keeper.flush()
    const second = await openWindow()
    second.store.edit(title('Right'))
    await second.keeper.flush()
    first.store.edit(title('Left'))
    await first.keeper.flush()
    expect((await titles(second.keeper)).sort()).toEqual(['Left', 'Right'])
  })
})

describe('a plan that several windows work on together', () => {
  test('is one draft that all of them write, and stays when one of them leaves it or changes it alone', async () => {
    const first = await openWindow()
    first.store.edit(title('Start'))
    await first.keeper.flush()
    const second = await openWindow()
    expect(second.keeper.openKey()).toBe(first.keeper.openKey())
    for (const { keeper } of [first, second]) keeper.shareDraft(true)
    first.store.edit(title('Left'))
    await first.keeper.flush()
    second.store.edit(title('Right'))
    await second.keeper.flush()
    expect(await titles(first.keeper)).toEqual(['Right'])
    for (const { store } of [first, second]) expect(store.notice.value).toBe('')
    // One that only looked on opens another plan.
    const third = await openWindow()
    third.keeper.shareDraft(true)
    third.store.open({ ...EMPTY_PLAN, title: 'Other' })
    await third.keeper.flush()
    expect((await titles(first.keeper)).sort()).toEqual(['Other', 'Right'])
    first.keeper.shareDraft(false)
    first.store.edit(title('Alone'))
    await first.keeper.flush()
    expect((await titles(first.keeper)).sort()).toEqual(['Alone', 'Other'])
  })
})

describe('what the windows are told', () => {
  test('is that a plan is changed elsewhere, and only then that both are kept when both are', async () => {
    const first = await openWindow()
    first.store.edit(title('Start'))
    await first.keeper.flush()
    const second = await openWindow()
    second.store.edit(title('Right'))
    await second.keeper.flush()
    await vi.waitFor(() => expect(first.store.notice.value).toBe(NOTICES.elsewhere))
    expect(await titles(first.keeper)).toEqual(['Right'])
    first.store.edit(title('Left'))
    await first.keeper.flush()
    await vi.waitFor(() => expect(first.store.notice.value).toBe(NOTICES.parted))
    expect((await titles(first.keeper)).sort()).toEqual(['Left', 'Right'])
  })

  test('comes out at the next save where the browser lets windows not speak to each other', async () => {
    vi.stubGlobal('BroadcastChannel', undefined)
    const first = await openWindow()
    first.store.edit(title('Start'))
    await first.keeper.flush()
    const second = await openWindow()
    second.store.edit(title('Right'))
    await second.keeper.flush()
    expect(first.store.notice.value).toBe('')
    first.store.edit(title('Left'))
    await first.keeper.flush()
    await vi.waitFor(() => expect(first.store.notice.value).toBe(NOTICES.parted))
    vi.unstubAllGlobals()
  })
})

describe('a plan that is removed', () => {
  test('is brought back as it was, by its own window or another', async () => {
    const { store, keeper } = await openWindow()
    store.edit(title('Ridge net'))
    await keeper.flush()
    const key = await keyOf(keeper, 'Ridge net')
    await keeper.remove(key)
    await keeper.remove(key)
    expect(await titles(keeper)).toEqual([])
    const later = await openWindow()
    expect(later.store.plan.value.title).toBe(EMPTY_PLAN.title)
    await later.keeper.bringBack(key)
    expect(await titles(later.keeper)).toEqual(['Ridge net'])
    await later.keeper.open(key)
    expect(later.store.plan.value.title).toBe('Ridge net')
  })

  test('makes room for later ones only when twenty of those have been removed', async () => {
    const { keeper } = await openWindow()
    const drafts = await openDrafts(`browser-${browser}`)
    for (let i = 0; i < 22; i++) {
      const plan = { ...EMPTY_PLAN, title: `Net ${i}` }
      await drafts.save({ plan, state: { key: `k${i}`, revision: 1 }, doc: `d${i}` })
      await drafts.remove(`k${i}`)
    }
    drafts.close()
    const removed = (await entries(keeper)).map((entry) => entry.title)
    expect(removed).toHaveLength(20)
    expect(removed).not.toContain('Net 1')
    expect(removed).toContain('Net 2')
  })
})

describe('what is half drawn', () => {
  const LINE = {
    kind: 'line',
    start: { kind: 'ground', position: [10, 47] },
    bends: [[10.01, 47]],
    lays: ['surface'],
  } as const

  test('is taken up again in the next window, and gone once it is drawn or put aside', async () => {
    const { store, keeper } = await openWindow()
    store.edit(title('Ridge net'))
    store.underWay.value = LINE
    await keeper.flush()
    const later = await openWindow()
    expect(later.store.takenUp.value).toEqual(LINE)
    later.store.underWay.value = later.store.takenUp.value
    later.store.underWay.value = null
    later.store.edit(title('Drawn'))
    await later.keeper.flush()
    expect((await openWindow()).store.takenUp.value).toBeNull()
  })

  test('goes with the plan that it was begun on, and comes back with it', async () => {
    const { store, keeper } = await openWindow()
    store.edit(title('First'))
    store.underWay.value = LINE
    await keeper.flush()
    const first = await keyOf(keeper, 'First')
    store.open({ ...EMPTY_PLAN, title: 'Second' })
    store.underWay.value = null
    store.edit(title('Second, changed'))
    await keeper.flush()
    expect(store.takenUp.value).toBeNull()
    await keeper.open(first)
    expect(store.takenUp.value).toEqual(LINE)
  })

  test('is left out where the plan no longer has what it begins on, or the record is torn', async () => {
    const { keeper } = await openWindow()
    for (const underWay of [
      { ...LINE, start: { kind: 'station', id: 'gone' } },
      { ...LINE, lays: [] },
      { kind: 'hazard', hazard: 'dragon', corners: [[10, 47]] },
      'torn',
    ]) {
      const text = formatPlan({ ...EMPTY_PLAN, title: 'Kept' })
      await plant({
        key: 'k',
        revision: 1,
        doc: 'd',
        title: 'Kept',
        savedAt: new Date(),
        order: 1,
        underWay,
        text,
      })
      const { store } = await openWindow()
      expect([store.plan.value.title, store.takenUp.value]).toEqual(['Kept', null])
    }
    keeper.stop()
  })
})

describe('the plans of a browser', () => {
  test('say which one is on the table, and give each to be looked at', async () => {
    const { store, keeper } = await openWindow()
    expect(keeper.openKey()).toBeNull()
    store.edit(title('First'))
    await keeper.flush()
    const first = await keyOf(keeper, 'First')
    expect(keeper.openKey()).toBe(first)
    const later = await openWindow()
    expect(later.keeper.openKey()).toBe(first)
    expect((await later.keeper.planOf(first))?.title).toBe('First')
    await plant({ key: 'torn', text: '{"type":' })
    expect(await later.keeper.planOf('torn')).toBeUndefined()
  })

  test('are renamed and copied, each a plan of its own', async () => {
    const { store, keeper } = await openWindow()
    store.edit(title('First'))
    await keeper.flush()
    await keeper.keepAside(setTitle(store.plan.value, 'Copy of First'))
    expect(await titles(keeper)).toEqual(['Copy of First', 'First'])
    const copy = await keyOf(keeper, 'Copy of First')
    await keeper.rename(copy, 'Second')
    expect(await titles(keeper)).toEqual(['Second', 'First'])
    expect((await keeper.planOf(copy))?.title).toBe('Second')
    await keeper.open(copy)
    store.edit(title('Second, changed'))
    await keeper.flush()
    expect((await titles(keeper)).sort()).toEqual(['First', 'Second, changed'])
  })
})

test('a plan on the table that another window renames has its new name, and what was changed here', async () => {
  const here = await openWindow()
  here.store.edit(title('Old'))
  await here.keeper.flush()
  const there = await openWindow()
  there.store.open(setTitle(EMPTY_PLAN, 'Another'))
  await there.keeper.rename(await keyOf(there.keeper, 'Old'), 'New')
  here.store.edit((plan) => ({ ...plan, notes: 'drawn here' }) as Plan)
  await here.keeper.flush()
  await here.keeper.flush()
  expect(here.store.plan.value.title).toBe('New')
  const key = await keyOf(here.keeper, 'New')
  expect(await here.keeper.planOf(key)).toMatchObject({ title: 'New' })
  expect(await titles(here.keeper)).not.toContain('Old')
})

describe('versions of a plan', () => {
  test('that are removed can be put back', async () => {
    const { store, keeper } = await openWindow()
    store.edit(title('Mine'))
    await keeper.flush()
    await keeper.keepVersion('one')
    const [version] = await keeper.versions()
    const putBack = await keeper.removeVersion(version!.id)
    expect(await keeper.versions()).toEqual([])
    await putBack()
    expect((await keeper.versions()).map(({ name }) => name)).toEqual(['one'])
  })

  test('are kept under a name, over reloads, and brought back with the way to undo it', async () => {
    const { store, keeper } = await openWindow()
    store.edit(title('Morning'))
    await keeper.flush()
    await keeper.keepVersion('as walked')
    store.edit(title('Evening'))
    await keeper.flush()

    const later = await openWindow()
    const [version] = await later.keeper.versions()
    expect(version?.name).toBe('as walked')
    await later.keeper.bringBackVersion(version!)
    expect(later.store.plan.value.title).toBe('Morning')
    expect((await later.keeper.versions()).map(({ name }) => name)).toEqual([
      'Before “as walked” was brought back',
      'as walked',
    ])
    later.store.undo()
    expect(later.store.plan.value.title).toBe('Evening')
  })

  test('belong to their plan alone', async () => {
    const { store, keeper } = await openWindow()
    store.edit(title('Mine'))
    await keeper.flush()
    await keeper.keepVersion('one')
    store.open({ ...EMPTY_PLAN, title: 'Other' })
    expect(await keeper.versions()).toEqual([])
  })
})

describe('a clock that was set back', () => {
  test('does not make an old plan the newest', async () => {
    const { store, keeper } = await openWindow()
    store.edit(title('Before'))
    await keeper.flush()
    const hourAgo = Date.now() - 3_600_000
    vi.spyOn(Date, 'now').mockReturnValue(hourAgo)
    store.open({ ...EMPTY_PLAN })
    store.edit(title('After'))
    await keeper.flush()
    const later = await openWindow()
    expect(later.store.plan.value.title).toBe('After')
    expect(await titles(later.keeper)).toEqual(['After', 'Before'])
  })
})

describe('a browser that cannot keep', () => {
  const leave = () => {
    const event = new Event('beforeunload', { cancelable: true })
    dispatchEvent(event)
    return event.defaultPrevented ? 'asks' : 'goes'
  }

  test('says so when the disk is full, asks before the page goes, tries again by itself, and keeps when there is room', async () => {
    const { store, keeper } = await openWindow()
    const put = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError')
    })
    store.edit(title('Too much'))
    await keeper.flush()
    expect(store.notKept.value).toBe(NOTICES.full)
    expect(store.plan.value.title).toBe('Too much')
    expect(leave()).toBe('asks')
    store.inFile.value = store.settled.value
    expect(leave()).toBe('goes')
    store.inFile.value = null

    put.mockRestore()
    await vi.waitFor(async () => expect(await titles(keeper)).toEqual(['Too much']), { timeout: 20_000 })
    expect([store.notKept.value, leave()]).toEqual(['', 'goes'])
  })

  test('says so where it gives no store, starts all the same, and keeps as soon as it gives one', async () => {
    const open = vi.spyOn(indexedDB, 'open').mockImplementation(() => {
      throw new DOMException('private window', 'SecurityError')
    })
    const { store, keeper } = await openWindow()
    expect(store.notKept.value).toBe(NOTICES.nowhere)
    expect(await keeper.list()).toBeNull()
    expect(leave()).toBe('goes')
    store.edit(title('Drawn all the same'))
    expect(leave()).toBe('asks')
    open.mockRestore()
    await vi.waitFor(async () => expect(await titles(keeper)).toEqual(['Drawn all the same']), {
      timeout: 20_000,
    })
    expect([store.notKept.value, leave()]).toEqual(['', 'goes'])
  })

  test('says so when a newer program takes the store over', async () => {
    const { store, keeper } = await openWindow()
    store.edit(title('Before'))
    await keeper.flush()
    const { openDB } = await import('idb')
    const newer = await openDB(`browser-${browser}`, 2)
    store.edit(title('After'))
    await keeper.flush()
    await vi.waitFor(() => expect(store.notKept.value).toBe(NOTICES.newer), { timeout: 20_000 })
    expect(leave()).toBe('asks')
    newer.close()
  })
})

describe('a record that is damaged', () => {
  const TEXT = formatPlan({ ...EMPTY_PLAN, title: 'Damaged' })
  const WHOLE = {
    key: 'x',
    revision: 1,
    doc: 'd',
    title: 'Damaged',
    savedAt: new Date(),
    order: 9e15,
    text: TEXT,
  }
  /** Those of which the plan itself is there still open; of the others the list offers the text. */
  const KINDS: readonly { what: string; record: object; opens: boolean }[] = [
    { what: 'no date', record: { ...WHOLE, savedAt: undefined }, opens: true },
    { what: 'a date that is text', record: { ...WHOLE, savedAt: 'yesterday' }, opens: true },
    {
      what: 'no revision and a title that is a number',
      record: { ...WHOLE, revision: undefined, title: 7 },
      opens: true,
    },
    {
      what: 'an order that is none and an origin that is none',
      record: { ...WHOLE, order: Number.NaN, base: 3 },
      opens: true,
    },
    { what: 'a text that is a number', record: { ...WHOLE, text: 42 }, opens: false },
    { what: 'only a key', record: { key: 'x' }, opens: false },
    { what: 'a torn text', record: { ...WHOLE, text: TEXT.slice(0, 40) }, opens: false },
    {
      what: 'a text that is no plan',
      record: { ...WHOLE, text: '{"type":"FeatureCollection"}' },
      opens: false,
    },
  ]

  test.each(KINDS)('with $what takes no other plan with it', async ({ record, opens }) => {
    const before = await openWindow()
    before.store.edit(title('Good'))
    await before.keeper.flush()
    await plant(record)

    const { store, keeper } = await openWindow()
    // Newest by its order, or beside the good one where it has none.
    expect(['Good', ...(opens ? ['Damaged'] : [])]).toContain(store.plan.value.title)
    expect(store.notice.value).toBe(opens ? '' : NOTICES.unreadable)
    expect(await entries(keeper)).toHaveLength(2)
    if (opens) {
      await keeper.open('x')
      expect(store.plan.value.title).toBe('Damaged')
    } else {
      const text = 'text' in record ? String(record.text) : '"x"'
      expect(await keeper.textOf('x')).toContain(text)
      await keeper.remove('x')
      expect(await titles(keeper)).toEqual(['Good'])
    }
    store.edit(title('Goes on'))
    await keeper.flush()
    expect(await titles(keeper)).toContain('Goes on')
    expect(store.notKept.value).toBe('')
  })
})

test('a copy of the program takes in what all copies on a server once shared, and leaves it there', async () => {
  const { openDB } = await import('idb')
  const shared = await openDB('fieldpair', 1, {
    upgrade: (fresh) => void fresh.createObjectStore('drafts', { keyPath: 'key' }),
  })
  const text = formatPlan({ ...EMPTY_PLAN, title: 'From before' })
  await shared.put('drafts', { key: 'old', revision: 3, title: 'From before', savedAt: new Date(), text })
  const { store } = await openWindow()
  expect(store.plan.value.title).toBe('From before')
  expect(await shared.count('drafts')).toBe(1)
  shared.close()
  indexedDB.deleteDatabase('fieldpair')
})
