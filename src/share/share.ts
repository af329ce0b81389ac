import type { Journal } from '../journal/journal'
import { stateOf, takeState } from '../journal/journal-state'
import type { Plan } from '../plan/plan'
import { askBox } from './ask-box'
import { keptName } from './kept-name'
import { type KeptRooms, openRooms } from './kept-rooms'
import { newJournal } from './new-journal'
import { keysOfInvitation, makeKeys, type PlanKeys, passOf, tagOf } from './plan-keys'
import { beginningOf, Room, TOO_LARGE } from './room'
import { makeHand } from './sealed'
import { SharedPlan, type SharedStore } from './shared-plan'
import { sharedTagOf, withTag } from './shared-tag'
import { lastBeginning } from './stream-reads'

/** What sharing needs of the store besides what a shared plan does. */
export interface SharingStore extends SharedStore {
  readonly open: (plan: Plan) => void
}

const rooms = (): Promise<KeptRooms | null> =>
  openRooms(`fieldpair shared ${new URL('.', location.href).pathname}`).catch(() => null)

const onBox = (path: string): URL => new URL(path, location.href)

/** Whether a box served this page, so that a plan can be shared over it. */
export const isOnBox = async (): Promise<boolean> => (await askBox()) !== null

/** Shares the plan on the table over the box: from now on its journal is on the box as well. A sentence where the box does not take it. */
export const startSharing = (store: SharingStore): Promise<string> => shareAnew(store, null)

/** @param known the journal that the plan has already */
async function shareAnew(store: SharingStore, known: Journal | null, names?: unknown): Promise<string> {
  const keys = makeKeys()
  const plan = withTag(store.settled.peek(), tagOf(keys))
  // Told before the box has made room for what it would not take.
  const first = new Room(keys, known ?? newJournal(plan), makeHand(keys.write!))
  const why = first.beginning(0) ? await announce(keys) : TOO_LARGE
  if (why) return why
  store.edit(() => plan)
  if (known) known.write(makeHand(keys.write!).name, known.mended().plan, plan, Date.now())
  await goOn(store, { keys, journal: known ?? newJournal(plan), upTo: 0, names }, await rooms(), plan, true)
  return ''
}

/** Has the box make room for a plan. A sentence where it does not. */
async function announce(keys: PlanKeys): Promise<string> {
  const { read, write } = passOf(keys)
  try {
    const answer = await fetch(onBox('/share/plans'), {
      method: 'POST',
      body: JSON.stringify({ tag: tagOf(keys), read, write }),
    })
    if (answer.ok) return ''
    return ((await answer.json()) as { why?: string }).why ?? 'The box does not take the plan.'
  } catch {
    return 'The box is not reached: go nearer, or see whether it is on.'
  }
}

/** Joins the plan that a fragment has the keys of. Undefined where it has none; else a sentence, empty where all is well. */
export async function joinByFragment(store: SharingStore, fragment: string): Promise<string | undefined> {
  const keys = keysOfInvitation(fragment)
  if (keys === undefined) return undefined
  if (keys === null) return 'The invitation has not come whole: ask for it once more.'
  const kept = await rooms()
  const before = await kept?.room(tagOf(keys))
  const known = before && beginningOf({ ...before })
  const found = known ?? (await lastBeginning(keys).catch(() => undefined))
  if (found === undefined) return 'The box does not know this invitation, or is not reached.'
  if (found === null) return 'What is on the box cannot be opened with this invitation.'
  const { journal } = found
  // Whoever was left behind under old keys takes along what was done there.
  const last = store.sharing.peek()
  const left = last instanceof SharedPlan && last.table.journal.id === journal.id ? last.table.journal : null
  const brought = left && takeState(journal, stateOf(left))
  store.open(journal.mended().plan)
  await goOn(store, { keys, ...found }, kept, store.opened.peek(), brought instanceof Set && brought.size > 0)
  return ''
}

/** Goes on with a plan of this browser that is shared, where its keys are kept here. */
export async function resumeSharing(store: SharingStore, base = store.opened.peek()): Promise<void> {
  const openedPlan = store.opened.peek()
  const tag = sharedTagOf(base)
  if (tag === undefined || store.sharing.peek()?.box) return
  const kept = await rooms()
  const before = await kept?.room(tag)
  const known = before && beginningOf({ ...before })
  if (!before || !known || store.opened.peek() !== openedPlan) return
  await goOn(store, { keys: before.keys, ...known }, kept, base)
}

interface Known {
  readonly keys: PlanKeys
  readonly journal: Journal
  readonly upTo: number
  readonly names?: unknown
}

/**
 * @param base the plan that was on the table when this began: what the person has changed since is an edit
 * @param isNew the box has not all of it
 */
async function goOn(
  store: SharingStore,
  { keys, journal, upTo, names }: Known,
  kept: KeptRooms | null,
  base: Plan,
  isNew = false,
): Promise<void> {
  store.sharing.peek()?.leave()
  const room = new Room(keys, journal, keys.write && makeHand(keys.write))
  room.names.take(names)
  const tag = tagOf(keys)
  const own = (await kept?.envelopes(tag).catch(() => undefined)) ?? []
  for (const { bytes } of own) room.receive(bytes)
  const shared = new SharedPlan(store, room, kept, keptName(), upTo)
  shared.onChangeKeys = async () => {
    await shared.tellMoved()
    shared.leave()
    await kept?.forget(tag)
    store.notice.value =
      (await shareAnew(store, journal, room.names.all())) ||
      'The plan has new keys: invite anew whoever is to stay. The others are told that they are left behind.'
  }
  store.sharing.value = shared
  await shared.start(
    base,
    own.filter(({ isSent }) => !isSent),
    isNew,
  )
  const opened = store.opened.peek()
  const stop = store.opened.subscribe((each) => {
    if (each === opened) return
    shared.leave()
    queueMicrotask(() => stop())
  })
}
