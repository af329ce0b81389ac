import type { Journal } from '../journal/journal'
import { stateOf, takeState } from '../journal/journal-state'
import type { Plan } from '../plan/plan'
import type { StreamPlace } from './box-line'
import { type Carrier, overBox } from './carrier'
import { keptName } from './kept-name'
import { type KeptRooms, openRooms } from './kept-rooms'
import { newJournal } from './new-journal'
import { keysOfInvitation, makeKeys, type PlanKeys, tagOf } from './plan-keys'
import { beginningOf, Room, TOO_LARGE } from './room'
import { makeHand } from './sealed'
import { SharedPlan, type SharedStore } from './shared-plan'
import { sharedTagOf, withTag } from './shared-tag'

/** What sharing needs of the store besides what a shared plan does. */
export interface SharingStore extends SharedStore {
  readonly open: (plan: Plan) => void
  /** The journal of a plan that nobody shares: whoever stops sharing goes on with it. */
  readonly ownJournal?: {
    peek(): {
      readonly keep: (journal: Journal) => Promise<void>
      readonly upToNow: (mayBegin: boolean) => Promise<Journal | null>
      readonly takeBrought: () => Journal | null
    } | null
  }
}

const rooms = (): Promise<KeptRooms | null> =>
  openRooms(`fieldpair shared ${new URL('.', location.href).pathname}`).catch(() => null)

/** Whether a box served this page, so that a plan can be shared over it. */
export const isOnBox = overBox.isThere

/** Shares the plan on the table over the box: from now on its journal is on the box as well. A sentence where the box does not take it. */
export const startSharing = (store: SharingStore, over: Carrier = overBox): Promise<string> =>
  shareAnew(store, over, null)

/** @param known the journal that the plan has already */
async function shareAnew(
  store: SharingStore,
  over: Carrier,
  known: Journal | null,
  names?: unknown,
): Promise<string> {
  const keys = makeKeys()
  store.sharing.peek()?.absorbNow()
  const plan = withTag(store.settled.peek(), tagOf(keys))
  // Told before the box has made room for what it would not take.
  const first = new Room(keys, known ?? newJournal(plan), makeHand(keys.write!))
  const why = first.beginning(0) ? await over.announce(keys) : TOO_LARGE
  if (why) return why
  store.edit(() => plan)
  if (known) known.write(makeHand(keys.write!).name, known.mended().plan, plan, Date.now())
  await goOn(
    store,
    over,
    { keys, journal: known ?? newJournal(plan), upTo: 0, names },
    await rooms(),
    plan,
    true,
  )
  return ''
}

/** Joins the plan that a fragment has the keys of. Undefined where it has none; else a sentence, empty where all is well. */
export async function joinByFragment(
  store: SharingStore,
  fragment: string,
  over: Carrier = overBox,
): Promise<string | undefined> {
  const keys = keysOfInvitation(fragment)
  if (keys === undefined) return undefined
  if (keys === null) return 'The invitation has not come whole: ask for it once more.'
  const kept = await rooms()
  const before = await kept?.room(tagOf(keys))
  const known = before && beginningOf({ ...before })
  const here = known ?? (await over.lastBeginning(keys).catch(() => undefined))
  const found = here === undefined ? await over.beginningFromBase?.(keys) : here
  if (typeof found === 'string') return found
  if (found === undefined) return (await over.isThere()) ? UNKNOWN_HERE : NOT_REACHED
  if (found === null) return 'What is on the box cannot be opened with this invitation: ask for it once more.'
  const { journal } = found
  const isNews = keys.write !== null && (await takeAlong(store, kept, tagOf(keys), journal))
  store.open(journal.mended().plan)
  await goOn(store, over, { keys, ...found }, kept, store.opened.peek(), isNews)
  return ''
}

const UNKNOWN_HERE =
  'The box does not know this invitation: it is of another box, or was cut short. Ask for it once more.'
const NOT_REACHED =
  'The box is not reached: go nearer, or see whether it is on. Then open the invitation once more.'

/** Whoever was left behind under old keys takes along what was done there, also where the page was closed meanwhile. */
async function takeAlong(
  store: SharingStore,
  kept: KeptRooms | null,
  tag: string,
  journal: Journal,
): Promise<boolean> {
  const last = store.sharing.peek()
  let isNews = last instanceof SharedPlan && isBrought(journal, last.table.journal)
  for (const room of (await kept?.ofJournal(journal.id).catch(() => undefined)) ?? []) {
    const before = room.tag !== tag && room.keys.write && beginningOf({ ...room })
    if (!before) continue
    const old = new Room(room.keys, before.journal, null)
    for (const { bytes } of await kept!.envelopes(room.tag)) old.receive(bytes)
    isNews = isBrought(journal, old.journal) || isNews
  }
  return isNews
}

/** Takes in what another state of the journal has; whether it has anything. */
function isBrought(journal: Journal, other: Journal): boolean {
  const changed = other.id === journal.id && takeState(journal, stateOf(other))
  return changed instanceof Set && changed.size > 0
}

/** Goes on with a plan of this browser that is shared, where its keys are kept here. */
export async function resumeSharing(
  store: SharingStore,
  base = store.opened.peek(),
  over: Carrier = overBox,
): Promise<void> {
  await resume(store, over, base, false)
}

/** Shares a plan again with those from whom this screen had parted: what was changed alone comes to them, and theirs comes here. A sentence where that does not go. */
export async function shareAgain(store: SharingStore, over: Carrier = overBox): Promise<string> {
  const did = await resume(store, over, store.settled.peek(), true)
  if (did === 'reads')
    return 'You were invited to read only. Open the invitation again to see the plan as the others have it; what you have here stays.'
  return did === 'resumed' ? '' : 'This browser has no key to that plan any more: open the invitation again.'
}

async function resume(
  store: SharingStore,
  over: Carrier,
  base: Plan,
  isAsked: boolean,
): Promise<'resumed' | 'reads' | 'not'> {
  const openedPlan = store.opened.peek()
  const tag = sharedTagOf(base)
  if (tag === undefined || store.sharing.peek()?.box) return 'not'
  const kept = await rooms()
  const before = await kept?.room(tag)
  const known = before && beginningOf({ ...before })
  if (!before || !known || (before.isLeft && !isAsked)) return 'not'
  // Nobody would take what was done here, and what they did must not lie over it.
  if (before.isLeft && !before.keys.write) return 'reads'
  const alone = before.isLeft ? await store.ownJournal?.peek()?.upToNow(false) : null
  if (store.opened.peek() !== openedPlan) return 'not'
  const fromFile = store.ownJournal?.peek()?.takeBrought()
  const own = [alone, before.keys.write ? fromFile : null]
  const isNews = own.map((each) => each != null && isBrought(known.journal, each)).includes(true)
  await goOn(
    store,
    over,
    { keys: before.keys, ...known },
    kept,
    isAsked ? store.settled.peek() : base,
    isNews,
  )
  return 'resumed'
}

interface Known extends StreamPlace {
  readonly keys: PlanKeys
  readonly journal: Journal
  readonly names?: unknown
}

/**
 * @param base the plan that was on the table when this began: what the person has changed since is an edit
 * @param isNew the box has not all of it
 */
async function goOn(
  store: SharingStore,
  over: Carrier,
  { keys, journal, names, ...place }: Known,
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
  const shared = new SharedPlan(store, room, kept, keptName(), place)
  shared.onStopped = async () => {
    await store.ownJournal?.peek()?.keep(journal)
  }
  shared.onChangeKeys = async () => {
    await shared.tellMoved()
    shared.leave()
    await kept?.forget(tag)
    store.notice.value =
      (await shareAnew(store, over, journal, room.names.all())) ||
      'The plan has new keys: invite anew whoever is to stay. The others are told that they are left behind.'
  }
  store.sharing.value = shared
  await shared.start(
    over,
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
