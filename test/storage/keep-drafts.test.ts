// @vitest-environment happy-dom
import 'fake-indexeddb/auto'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { EMPTY_PLAN, type Plan } from '../../src/plan/plan'
import { setTitle } from '../../src/plan/settings-edits'
import { createStore, type Store } from '../../src/state/store'
import { openDrafts } from '../../src/storage/drafts'
import { type Keeper, keepDrafts, NOTICES } from '../../src/storage/keep-drafts'

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
  if (!keeper) throw new Error('nothing is kept')
  keepers.push(keeper)
  return { store, keeper }
}

/** The clock that orders drafts ticks in milliseconds. */
const tick = () => new Promise((done) => setTimeout(done, 2))
const title = (text: string) => (plan: Plan) => setTitle(plan, text)
const titles = async (keeper: Keeper) => (await keeper.list()).map((draft) => draft.title)

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
    await drafts.save({ ...EMPTY_PLAN, title: 'After' }, { key: 'next', revision: 1 }, before!)
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

    const first = (await keeper.list()).find((draft) => draft.title === 'First')!
    await keeper.open(first.key)
    expect(store.plan.value.title).toBe('First')
    expect(store.canUndo.value).toBe(false)

    await keeper.remove((await keeper.list()).find((draft) => draft.title === 'Second')!.key)
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

describe('a browser that cannot keep', () => {
  test('says so in a sentence when the disk is full, goes on, and keeps the next edit when there is room again', async () => {
    const { store, keeper } = await openWindow()
    const put = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError')
    })
    store.edit(title('Too much'))
    await keeper.flush()
    expect(store.notice.value).toBe(NOTICES.full)
    expect(store.plan.value.title).toBe('Too much')

    put.mockRestore()
    await keeper.flush()
    expect(await titles(keeper)).toEqual(['Too much'])
    expect(store.notice.value).toBe('')
  })

  test('says so where it gives no store at all', async () => {
    vi.spyOn(indexedDB, 'open').mockImplementation(() => {
      throw new DOMException('private window', 'SecurityError')
    })
    const store = createStore()
    expect(await keepDrafts(store, 'no-such-browser')).toBeNull()
    expect(store.notice.value).toBe(NOTICES.nowhere)
  })

  test('leaves a draft that it cannot read in the list, and says so', async () => {
    const { keeper } = await openWindow()
    const { openDB } = await import('idb')
    const db = await openDB(`browser-${browser}`)
    await db.put('drafts', { key: 'broken', revision: 1, title: 'Broken', savedAt: new Date(), text: '{' })
    db.close()
    const later = await openWindow()
    expect(later.store.notice.value).toBe(NOTICES.unreadable)
    expect(await titles(keeper)).toEqual(['Broken'])
  })
})
