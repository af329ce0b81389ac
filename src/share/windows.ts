import { signal } from '@preact/signals'
import { formatPlan } from '../files/format-plan'
import { stateOf, takeState } from '../journal/journal-state'
import type { Plan } from '../plan/plan'
import { HandNames } from './hand-names'
import { Here } from './here'
import { journalIn } from './journal-in'
import { newJournal } from './new-journal'
import type { SelectedThing } from './selected-key'
import { sharedTagOf } from './shared-tag'
import type { Sharing } from './sharing'
import { TableJournal, type TableStore } from './table-journal'
import type { WindowBeginning, WindowWord } from './window-words'

interface WindowStore extends TableStore {
  readonly opened: { subscribe(listener: (plan: Plan) => void): () => void; peek(): Plan }
  readonly selection: {
    subscribe(listener: (thing: SelectedThing) => void): () => void
    peek(): SelectedThing
  }
  readonly sharing: { value: Sharing | null; peek(): Sharing | null }
}

/** The way to the other windows. */
interface Channel {
  addEventListener(type: 'message', hear: (event: MessageEvent) => void): void
  removeEventListener(type: 'message', hear: (event: MessageEvent) => void): void
}

const NAME = 'Another window'
/** A window that asked and is not heard after that is gone, ms. */
const UNANSWERED_MS = 30_000

/**
 * A plan that several windows of one browser have on the table: what is done in one is done in all, through the same journal as over a box.
 *
 * @param begun what another window has answered with, and the plan that both had alike; null where this window is the first
 */
export function windowsPlan(
  store: WindowStore,
  say: (word: WindowWord) => void,
  channel: Channel,
  begun: (WindowBeginning & { readonly base: Plan }) | null,
): Sharing | null {
  const journal = begun ? journalIn(begun) : newJournal(store.settled.peek())
  if (!journal) return null
  const { id } = journal
  const hand = `w${crypto.getRandomValues(new Uint32Array(3)).join('')}`
  const names = new HandNames()
  const table = new TableJournal(store, journal, hand, names, (edits) => say({ is: 'step', id, edits }))
  const tellHere = () => say({ is: 'here', id, hand, seen: Object.fromEntries(journal.seen) })
  const here = new Here({
    ...{ own: hand, name: signal(NAME), selection: store.selection, lastKey: () => '' },
    say: tellHere,
  })
  const begin = (): WindowBeginning => ({
    id,
    plan: formatPlan(journal.mended().plan),
    state: stateOf(journal),
  })
  /** Windows that lacked something of this one when they were last heard: a word may be on its way, but not two in turn. */
  const lacking = new Set<string>()
  const lacks = ({ seen }: { readonly seen: Readonly<Record<string, number>> }) =>
    [...journal.seen].some(([each, number]) => number > (seen[each] ?? 0))

  const hear = ({ data }: MessageEvent) => {
    const word = data as WindowWord
    if (word.is === 'hello' || word.is === 'begin' || word.is === 'moved' || word.id !== id) return
    switch (word.is) {
      case 'step':
        table.take(journal.take(word.edits))
        break
      case 'here':
        names.learn(word.hand, NAME)
        here.hear(word.hand, { name: NAME, at: '', on: '' })
        if (!lacks(word)) lacking.delete(word.hand)
        else if (lacking.has(word.hand)) say({ is: 'more', id, beginning: begin() })
        else lacking.add(word.hand)
        break
      case 'more': {
        const changed = takeState(journal, word.beginning.state)
        if (typeof changed !== 'string') table.take({ changed, added: [], refused: [] })
        break
      }
      case 'bye':
        here.left(word.hand)
        // Whoever is only silent may be a window that sleeps: it is not left for that.
        others.delete(word.hand)
        if (others.size === 0 && isAnswered) {
          table.absorbNow()
          sharing.leave()
        }
    }
    if (word.is === 'here') {
      others.add(word.hand)
      isAnswered = true
    }
  }
  const others = new Set<string>()
  let isAnswered = false
  const giveUp = setTimeout(() => !isAnswered && sharing.leave(), UNANSWERED_MS)
  let isLeft = false
  const sharing: Sharing = {
    ...{ box: null, mayWrite: true, name: { value: NAME }, names: () => names.list() },
    ...{ others: here.others, spots: here.spots, tellSpot: () => undefined },
    ...{ torn: table.torn, said: table.said, taken: table.taken, log: table.log },
    ...{ tell: table.tell, putAway: table.putAway, choose: table.choose },
    ...{ goBackTo: table.goBackTo, filePlan: table.filePlan, everKnown: table.everKnown },
    absorbNow: () => table.absorbNow(),
    takeFile: (plan) => table.takeFile(plan) !== 'another',
    begin,
    giveWayTo: (other) => other.id < id,
    leave: () => {
      if (isLeft) return
      isLeft = true
      clearTimeout(giveUp)
      channel.removeEventListener('message', hear)
      stopFollowing()
      here.leave()
      table.leave()
      say({ is: 'bye', id, hand })
      const plan = store.settled.peek()
      const tag = sharedTagOf(plan)
      if (tag !== undefined) say({ is: 'moved', tag, plan: formatPlan(plan) })
      if (store.sharing.peek() === sharing) store.sharing.value = null
    },
  }
  channel.addEventListener('message', hear)
  table.start(begun?.base ?? store.settled.peek())
  const opened = store.opened.peek()
  const stopFollowing = store.opened.subscribe((plan) => {
    if (plan !== opened) queueMicrotask(sharing.leave)
  })
  tellHere()
  return sharing
}
