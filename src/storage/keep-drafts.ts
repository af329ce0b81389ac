import type { Plan } from '../plan/plan'
import { type DraftEntry, type DraftState, type Drafts, openDrafts } from './drafts'
import { newKey } from './new-key'

/** What is kept and who is told: the parts of the store that this needs. */
export interface KeptStore {
  /** The plan as last settled. */
  readonly settled: { subscribe(listener: (plan: Plan) => void): () => void; peek(): Plan }
  /** The plan as it was opened: another value means another document. */
  readonly opened: { peek(): Plan }
  readonly open: (plan: Plan) => void
  readonly notice: { value: string }
}

/** The plans kept in this browser, as the list of plans uses them. */
export interface Keeper {
  readonly list: () => Promise<readonly DraftEntry[]>
  readonly open: (key: string) => Promise<void>
  readonly remove: (key: string) => Promise<void>
  readonly flush: () => Promise<void>
  readonly stop: () => void
}

export const NOTICES = {
  nowhere: 'This browser keeps no drafts here. Save the plan to a file before you leave.',
  full: 'There is no room left on the disk: the last changes are not kept. Save the plan to a file, or remove old plans from the list under Plans.',
  failed: 'The last changes could not be kept in this browser. Save the plan to a file.',
  parted:
    'This plan was changed in another window too. Both are kept, as two plans, in the list under Plans.',
  unreadable: 'The plan last kept in this browser can no longer be read. It stays in the list under Plans.',
} as const

/** Long enough to gather a burst of edits, and well within a second. */
const GATHER_MS = 200
const LAST_KEY = 'fieldpair-draft'

/** The document on screen, as this window keeps it. */
interface Session {
  /** What is written under a key of this window's own. */
  state: DraftState
  /** The draft it grew out of, until that is superseded. */
  base: DraftState | null
  changed: boolean
}

const newSession = (base: DraftState | null): Session => ({
  state: { key: newKey(), revision: 0 },
  base,
  changed: false,
})

/**
 * Opens the plan last kept, and from then on keeps every settled edit within a second and when the page goes away.
 * Several windows may change one plan: each keeps its own, and the person is told. Gives null where nothing can be kept.
 */
export async function keepDrafts(store: KeptStore, name?: string): Promise<Keeper | null> {
  let drafts: Drafts
  try {
    drafts = await openDrafts(name)
  } catch {
    store.notice.value = NOTICES.nowhere
    return null
  }
  const windows = new BroadcastChannel('fieldpair-drafts')
  let session = newSession(null)
  let opened = store.opened.peek()
  let seen = store.settled.peek()
  let written: Plan | null = seen
  let timer: ReturnType<typeof setTimeout> | undefined

  const tellFailure = (error: unknown) => {
    const full = error instanceof Error && error.name === 'QuotaExceededError'
    store.notice.value = full ? NOTICES.full : NOTICES.failed
  }

  const flush = async () => {
    clearTimeout(timer)
    timer = undefined
    if (seen === written) return
    const [plan, current] = [seen, session]
    written = plan
    current.state = { key: current.state.key, revision: current.state.revision + 1 }
    // Before the save: where the page is going away, nothing runs after it.
    rememberLast(current.state.key)
    try {
      await drafts.save(plan, current.state, current.base)
    } catch (error) {
      if (written === plan) written = null
      tellFailure(error)
      return
    }
    if (store.notice.value === NOTICES.full) store.notice.value = ''
    const base = current.base
    current.base = null
    if (!base) return
    if (!(await drafts.supersede(base))) store.notice.value = NOTICES.parted
    windows.postMessage(base.key)
  }

  const onSettled = (plan: Plan) => {
    if (plan === seen) return
    if (store.opened.peek() !== opened) {
      void flush()
      void leave(session)
      session = newSession(null)
      opened = store.opened.peek()
    } else session.changed = true
    seen = plan
    timer ??= setTimeout(() => void flush(), GATHER_MS)
  }

  /** A plan that was only looked at leaves no draft behind. */
  const leave = async ({ changed, base, state }: Session) => {
    if (!changed && !base && state.revision > 0) await drafts.remove(state.key)
  }

  const open = async (key: string) => {
    const found = await drafts.load(key)
    if (!found) return
    if (!found.plan.ok) {
      store.notice.value = NOTICES.unreadable
      return
    }
    if (found.base) await drafts.supersede(found.base)
    await flush()
    await leave(session)
    session = newSession(found.state)
    opened = seen = written = found.plan.value
    rememberLast(key)
    store.open(found.plan.value)
  }

  const onWindow = (event: MessageEvent) => {
    if (event.data === session.state.key && session.state.revision > 0) store.notice.value = NOTICES.parted
  }
  const onHide = () => {
    if (document.visibilityState === 'hidden') void flush()
  }

  const kept = await drafts.list()
  const last = kept.find((draft) => draft.key === lastKey()) ?? kept[0]
  if (last) await open(last.key)

  windows.addEventListener('message', onWindow)
  addEventListener('pagehide', flush)
  document.addEventListener('visibilitychange', onHide)
  const unsubscribe = store.settled.subscribe(onSettled)

  return {
    list: drafts.list,
    open,
    remove: drafts.remove,
    flush,
    stop: () => {
      unsubscribe()
      clearTimeout(timer)
      windows.close()
      removeEventListener('pagehide', flush)
      document.removeEventListener('visibilitychange', onHide)
      drafts.close()
    },
  }
}

/** Which draft this window had open, so that a reload finds it again; the newest one elsewhere. */
function lastKey(): string | null {
  try {
    return sessionStorage.getItem(LAST_KEY)
  } catch {
    return null
  }
}

function rememberLast(key: string): void {
  try {
    sessionStorage.setItem(LAST_KEY, key)
  } catch {
    // Without it a reload opens the newest draft: nothing is lost.
  }
}
