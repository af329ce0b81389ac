import { signal } from '@preact/signals'
import { type Kinship, kinshipOf } from '../../files/carry/kinship'
import type { Edit } from '../../journal/edit'
import { Journal, type TornRegister } from '../../journal/journal'
import { stateOf, takeState } from '../../journal/journal-state'
import { placeOf } from '../../journal/keys'
import { shownValue } from '../../journal/members'
import { mergedJournal } from '../../journal/merge-plans'
import type { Plan } from '../../plan/plan'
import { headsOf, kinshipByJournal } from '../../share/kinship-by-journal'
import type { Store } from '../../state/store'
import { formatCount } from '../../words/units'
import { verdictNews } from '../../words/verdict-news'

/** The journals of one plan on two sides. */
interface Joined {
  readonly mine: Journal
  readonly theirs: Journal
}

const THEIRS = 'the one that came in'

/** How a plan that came in stands to the one on the table: by their journals where both have one, else by where they were handed on. */
export function kinshipWith(
  mine: Plan,
  theirs: Plan,
  kept: readonly Plan[],
  own: Journal | null,
  other: Journal | null,
): Kinship {
  const handed = kinshipOf(mine, theirs, kept)
  const heads = other ?? headsOf(theirs)
  const is = own && heads && handed.is !== 'same' ? kinshipByJournal(own, heads) : undefined
  if (is === undefined || is === handed.is) return handed
  return is === 'both changed' ? { is, base: handed.is === 'both changed' ? handed.base : undefined } : { is }
}

/** The table goes on with what both journals hold: the plan is the other's already. */
export function takeJournal(store: Store, { mine, theirs }: Joined): void {
  takeState(mine, stateOf(theirs))
  void store.ownJournal.peek()?.keep(mine)
}

/** Merges what came in into the plan on the table, tells what became of it, and leaves what both had set differently to be chosen. */
export function mergeIn(store: Store, theirs: Plan, by: Plan | Joined): void {
  const before = { plan: store.settled.peek(), circuits: store.report.peek().circuits }
  const { journal, keys, isMine } = 'mine' in by ? joinedOf(by) : mergedOf(by, before.plan, theirs)
  const isJoined = 'mine' in by
  const { plan, mended } = journal.mended()
  store.edit(() => plan)
  if (isJoined) void store.ownJournal.peek()?.keep(journal)
  offerChoices(store, journal, isMine, isJoined)
  const after = { plan, circuits: store.report.peek().circuits }
  const edits = keys.map((key) => ({ who: THEIRS, key }))
  const news = verdictNews(before, after, edits, store.tongue.peek())
  const torn = journal.torn().length
  const differ =
    torn > 0 ? [`${formatCount(torn, 'thing')} both had set differently: choose in the panel.`] : []
  store.notice.value = ['The two plans are one.', ...differ, ...mended, ...news].join(' ')
}

interface Merged {
  readonly journal: Journal
  /** What came in, by its keys. */
  readonly keys: readonly string[]
  readonly isMine: (edit: Edit) => boolean
}

function joinedOf({ mine, theirs }: Joined): Merged {
  const seen = new Map(mine.seen)
  const changed = takeState(mine, stateOf(theirs))
  return {
    journal: mine,
    keys: typeof changed === 'string' ? [] : [...changed],
    isMine: ({ hand, number }) => number <= (seen.get(hand) ?? 0),
  }
}

function mergedOf(base: Plan, mine: Plan, theirs: Plan): Merged {
  const { journal, came } = mergedJournal(base, mine, theirs)
  const other = came[0]?.hand
  return { journal, keys: came.map(({ key }) => key), isMine: ({ hand }) => hand !== other }
}

/** What both had set differently, side by side until somebody has chosen. */
function offerChoices(store: Store, journal: Journal, isMine: Merged['isMine'], isKept: boolean): void {
  const torn = signal(journal.torn().map((each) => shownAs(each, isMine)))
  if (torn.peek().length === 0) return
  const opened = store.opened.peek()
  const choose = (key: string, value: unknown) => {
    const { member } = placeOf(key)!
    const isIt = (given: unknown) => JSON.stringify(shownValue(member, given)) === JSON.stringify(value)
    const edit = journal
      .torn()
      .find((each) => each.key === key)
      ?.edits.find((each) => isIt(each.value))
    if (!edit) return
    // On the plan as it is now: others of its properties may have been changed since.
    const now = new Journal('', store.settled.peek())
    now.choose('chosen', key, edit.value, Date.now())
    const { plan } = now.mended()
    store.edit(() => plan)
    journal.choose('chosen', key, edit.value, Date.now())
    if (isKept) void store.ownJournal.peek()?.keep(journal)
    torn.value = torn.peek().filter((each) => each.key !== key)
    if (torn.peek().length === 0) store.toChoose.value = null
  }
  store.toChoose.value = { torn, mayWrite: true, choose }
  const stop = store.opened.subscribe((plan) => {
    if (plan === opened) return
    store.toChoose.value = null
    queueMicrotask(() => stop())
  })
}

function shownAs({ key, edits }: TornRegister, isMine: Merged['isMine']) {
  const { member } = placeOf(key)!
  const choices = edits.map((edit) => ({
    who: isMine(edit) ? 'The one on the table' : 'What came in',
    atMs: 0,
    value: shownValue(member, edit.value),
  }))
  return { key, choices }
}
