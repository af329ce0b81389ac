import 'fake-indexeddb/auto'
import { afterAll, expect, test } from 'vitest'
import { formatPlan } from '../../src/files/format-plan'
import { followWindows } from '../../src/panel/carry/follow-windows'
import type { StationId } from '../../src/plan/id'
import { EMPTY_PLAN, type Plan } from '../../src/plan/plan'
import { addStation, renameStation } from '../../src/plan/station-edits'
import { setNote, setTitle } from '../../src/plan/text-edits'
import type { Carrier } from '../../src/share/carrier'
import { newJournal } from '../../src/share/new-journal'
import { ownJournal } from '../../src/share/own-journal'
import { keysOfInvitation } from '../../src/share/plan-keys'
import { Room } from '../../src/share/room'
import { makeHand } from '../../src/share/sealed'
import { joinByFragment, resumeSharing, shareAgain, startSharing } from '../../src/share/share'
import { createStore, type Store } from '../../src/state/store'
import { fakeBox, fakeBrowser } from './fake-box'

const { BroadcastChannel, location, addEventListener } = globalThis
const before = { BroadcastChannel, location, addEventListener }
const stores: Store[] = []
afterAll(() => {
  for (const store of stores) store.sharing.peek()?.leave()
  Object.assign(globalThis, before)
})

const base = addStation(
  { ...EMPTY_PLAN, title: 'Begun' },
  { id: 'a' as StationId, name: 'A', position: [10, 47] },
)
const windowWith = (plan: Plan): Store => {
  const store = createStore(plan)
  stores.push(store)
  return store
}
const fragmentOf = (store: Store) => new URL(store.sharing.peek()!.box!.invitation(true)).hash
const standing = (store: Store) => store.sharing.peek()?.box?.standing.peek()
const textOf = (store: Store) => formatPlan(store.plan.peek())
const isTogether = (store: Store) => expect.poll(() => standing(store)).toBe('together')
const journalOf = (store: Store, browser: string, doc: string) => {
  const own = ownJournal(store, `journals of ${browser}`, () => doc)
  store.ownJournal.value = own
  return own
}
const named = (name: string) => (plan: Plan) => renameStation(plan, 'a' as StationId, name)

test('two windows of one browser go onto a box together, and nothing is lost that either did meanwhile', async () => {
  const box = fakeBox()
  const [here, there] = [fakeBrowser(box, 'windows'), fakeBrowser(box, 'far')]
  here.enter()
  const [one, two] = [windowWith(base), windowWith(base)]
  for (const store of [one, two]) followWindows(store, { openKey: () => 'draft' }, here.over)
  await expect.poll(() => [one, two].map((store) => store.sharing.peek()?.box)).toEqual([null, null])
  two.edit((plan) => setNote(plan, 'of two'))
  expect(await startSharing(one, here.over)).toBe('')
  // The other window still works as one of two.
  two.edit(named('Ford'))
  for (const store of [one, two]) await isTogether(store)

  there.enter()
  const far = windowWith(EMPTY_PLAN)
  expect(await joinByFragment(far, fragmentOf(one), there.over)).toBe('')
  far.edit((plan) => setTitle(plan, 'From afar'))
  two.edit((plan) => setNote(plan, 'of two, once more'))
  for (const store of [one, two, far])
    await expect
      .poll(() => [
        store.plan.peek().title,
        store.plan.peek().note,
        store.plan.peek().stations.get('a' as StationId)?.name,
      ])
      .toEqual(['From afar', 'of two, once more', 'Ford'])
  // They are two hands on the box, and undo is of one's own.
  two.undo()
  await expect.poll(() => one.plan.peek().note).toBe('of two')
  expect(one.plan.peek().title).toBe('From afar')
})

test('who was away when the keys were changed takes along what was done; who is shut out keeps it, is told, and reaches nobody', async () => {
  const box = fakeBox()
  const [base1, crew, shut] = ['base', 'crew', 'shut'].map((name) => fakeBrowser(box, name)) as [
    ReturnType<typeof fakeBrowser>,
    ReturnType<typeof fakeBrowser>,
    ReturnType<typeof fakeBrowser>,
  ]
  base1.enter()
  const a = windowWith(base)
  await startSharing(a, base1.over)
  await isTogether(a)
  a.sharing.peek()!.name.value = 'Base'
  crew.enter()
  const b = windowWith(EMPTY_PLAN)
  await joinByFragment(b, fragmentOf(a), crew.over)
  const old = fragmentOf(a)
  shut.enter()
  const x = windowWith(EMPTY_PLAN)
  await joinByFragment(x, fragmentOf(a), shut.over)
  for (const store of [b, x]) await isTogether(store)

  crew.goOut(true)
  b.edit((plan) => setNote(plan, 'laid while away'))
  base1.enter()
  await a.sharing.peek()!.box!.changeKeys()
  await isTogether(a)
  expect(a.notice.peek()).toMatch(/^The plan has new keys/)
  await expect.poll(() => standing(x)).toBe('moved')
  expect(x.sharing.peek()!.said.peek().at(-1)).toMatch(/has given the plan new keys.*yours to keep\.$/)
  x.edit((plan) => setTitle(plan, 'By the one who is shut out'))
  expect(x.sharing.peek()!.box!.waiting.peek()).toBe(1)

  // With another program one can still write under the old keys.
  const keys = keysOfInvitation(old)!
  const hostile = new Room(keys, newJournal(base), makeHand(keys.write!))
  const slander = hostile.journal.write(hostile.hand!.name, base, named('Slandered')(base), Date.now())
  box.put(keys, { name: 'slander', bytes: hostile.step(slander)! })

  crew.goOut(false)
  await expect.poll(() => standing(b)).toBe('moved')
  expect(b.plan.peek().note).toBe('laid while away')
  // The page is closed, and the new invitation opened another day.
  b.sharing.peek()!.leave()
  crew.enter()
  const later = windowWith(EMPTY_PLAN)
  expect(await joinByFragment(later, fragmentOf(a), crew.over)).toBe('')
  await expect.poll(() => a.plan.peek().note).toBe('laid while away')
  await expect.poll(() => textOf(later)).toBe(textOf(a))
  expect([a.plan.peek().title, a.plan.peek().stations.get('a' as StationId)?.name]).toEqual(['Begun', 'A'])
  expect(x.plan.peek().title).toBe('By the one who is shut out')
})

test('who works on alone is not drawn back by the next visit, and shares again with all that both did', async () => {
  const box = fakeBox()
  const [one, two] = [fakeBrowser(box, 'stays'), fakeBrowser(box, 'parts')]
  one.enter()
  const a = windowWith(base)
  await startSharing(a, one.over)
  await isTogether(a)
  two.enter()
  const b = windowWith(EMPTY_PLAN)
  journalOf(b, 'parts', 'doc')
  await joinByFragment(b, fragmentOf(a), two.over)
  await isTogether(b)
  await b.sharing.peek()!.box!.stop()
  expect(b.sharing.peek()).toBeNull()
  b.edit((plan) => setNote(plan, 'alone'))
  a.edit((plan) => setTitle(plan, 'meanwhile'))

  await resumeSharing(b, b.opened.peek(), two.over)
  expect([b.sharing.peek(), b.plan.peek().note, b.plan.peek().title]).toEqual([null, 'alone', 'Begun'])
  expect(await shareAgain(b, two.over)).toBe('')
  for (const store of [a, b])
    await expect.poll(() => [store.plan.peek().note, store.plan.peek().title]).toEqual(['alone', 'meanwhile'])

  // A file of it that somebody else edited, opened on another day, comes to all and is not lost under what the box has.
  const [file, other] = [a.sharing.peek()!.filePlan(), windowWith(EMPTY_PLAN)]
  const own = journalOf(other, 'another', 'doc')
  await own.takeFile(file)
  other.edit(named('By file'))
  const edited = await own.filePlan()
  b.sharing.peek()!.leave()
  two.enter()
  const later = windowWith(EMPTY_PLAN)
  await journalOf(later, 'parts', 'later').takeFile(edited)
  await resumeSharing(later, later.opened.peek(), two.over)
  for (const store of [a, later])
    await expect.poll(() => store.plan.peek().stations.get('a' as StationId)?.name).toBe('By file')

  // Whoever was only let read keeps what is here, and is told the way back.
  const readers = fakeBrowser(box, 'reads')
  readers.enter()
  const c = windowWith(EMPTY_PLAN)
  await joinByFragment(c, new URL(a.sharing.peek()!.box!.invitation(false)).hash, readers.over)
  await isTogether(c)
  await c.sharing.peek()!.box!.stop()
  c.edit((plan) => setTitle(plan, 'my own'))
  expect(await shareAgain(c, readers.over)).toMatch(/^You were invited to read only/)
  expect([c.sharing.peek(), c.plan.peek().title]).toEqual([null, 'my own'])
})

test('a box that has no room for a plan says so at once, and takes it when it has', async () => {
  const box = fakeBox()
  const here = fakeBrowser(box, 'no room')
  here.enter()
  let room = false
  const over: Carrier = {
    ...here.over,
    openLine: async (...wish) => {
      const line = await here.over.openLine(...wish)
      const begin: typeof line.begin = async (bytes) => {
        if (!room) throw new Error('maximum bytes exceeded')
        await line.begin(bytes)
      }
      return { ...line, begin }
    },
  }
  const a = windowWith(base)
  await startSharing(a, over)
  await expect
    .poll(() => a.sharing.peek()!.said.peek())
    .toEqual([expect.stringMatching(/^The box has no more room/)])
  expect(standing(a)).toBe('coming')
  room = true
  await isTogether(a)
  expect(a.sharing.peek()!.said.peek()).toHaveLength(1)
})
