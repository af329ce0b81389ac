import type { Plan } from '../plan/plan'
import { setTitle } from '../plan/text-edits'
import type { UnderWay } from '../plan/under-way'
import { type Drafts, openDrafts } from './drafts'
import { askToKeepForGood } from './keep-for-good'
import type { Keeper, KeptStore } from './keeper'
import { NOTICES } from './keeping-notices'
import { lastKey, rememberLast } from './last-draft'
import { newKey } from './new-key'
import { otherWindows } from './other-windows'
import { ownName } from './own-name'
import { newSession, type Session, setJoint } from './session'
import { versionKeeper } from './versions'
import { whenPageGoes } from './when-page-goes'

/** Long enough to gather a burst of edits, and well within a second on a busy machine too. */
const GATHER_MS = 100
/** A large plan that others change all the time is written no oftener than takes an eighth of the page's time, and within a second. */
const SHARE = 8
const MOST_GATHER_MS = 600
/** After a failure the next try waits so long, the last of these from then on. */
const RETRY_MS = [1000, 2000, 5000, 10_000, 30_000]
/** A store that does not answer must not hold up the start. */
const OPENING_MS = 4000

/** Said to the other windows when a draft of theirs was gone on with here. */
interface TakenOver {
  readonly key: string
  /** Whether it was dropped for that; else it has changed meanwhile, and stays. */
  readonly isGone: boolean
}

/**
 * Opens the plan last kept, and from then on keeps every settled edit within a second and when the page goes away. Never rejects:
 * where nothing can be kept it says so, tries again and again, and has the browser ask before the page goes away.
 * Several windows may change one plan: each keeps its own, and the person is told.
 */
export async function keepDrafts(store: KeptStore, name = ownName('fieldpair')): Promise<Keeper> {
  let drafts: Drafts | null = null
  let opening: Promise<boolean> | null = null
  let isStopped = false
  let session = newSession(null)
  let opened = store.opened.peek()
  let seen = store.settled.peek()
  let written: Plan | null = seen
  let drawn = store.underWay.peek()
  let drawnWritten = drawn
  let timer: ReturnType<typeof setTimeout> | undefined
  let failures = 0
  let gatherMs = GATHER_MS

  const fail = (why: string) => {
    store.notKept.value = why
    if (isStopped) return
    clearTimeout(timer)
    timer = setTimeout(() => void flush(), RETRY_MS[Math.min(failures, RETRY_MS.length - 1)])
    failures += 1
  }
  const succeed = () => {
    failures = 0
    store.notKept.value = ''
  }

  /** Opens the store, once at a time. False where the browser gives none. */
  const connect = (): Promise<boolean> => {
    opening ??= openDrafts(name, () => {
      drafts = null
      fail(NOTICES.lost)
    }).then(
      (found) => {
        opening = null
        drafts = found
        if (isStopped) found.close()
        return true
      },
      (error: unknown) => {
        opening = null
        fail(nameOf(error) === 'VersionError' ? NOTICES.newer : NOTICES.nowhere)
        return false
      },
    )
    return opening
  }

  const flush = async (): Promise<void> => {
    clearTimeout(timer)
    timer = undefined
    if (!drafts && !(await connect())) return
    if (!drafts) return
    if (seen === written && drawn === drawnWritten) return succeed()
    const [plan, underWay, current, db] = [seen, drawn, session, drafts]
    const wasWritten = current.isWritten
    const titleBefore = written?.title
    written = plan
    drawnWritten = underWay
    const revision = current.state.revision + 1
    current.state = { key: current.state.key, revision }
    // Before the save: where the page is going away, nothing runs after it.
    rememberLast(current.state.key)
    try {
      const began = performance.now()
      const saving = db.save({ plan, underWay, ...current })
      gatherMs = Math.min(MOST_GATHER_MS, Math.max(GATHER_MS, SHARE * (performance.now() - began)))
      const { before } = await saving
      current.isWritten = true
      if (wasWritten && !before) void tellParted(current)
      if (before && before.revision >= revision && current.isJoint)
        current.state = { ...current.state, revision: before.revision }
      else if (before && before.revision >= revision && plan.title === titleBefore)
        takeTitle(current, before.title)
    } catch (error) {
      if (written === plan) written = null
      return fail(nameOf(error) === 'QuotaExceededError' ? NOTICES.full : NOTICES.failed)
    }
    succeed()
    if (current.changed) void askToKeepForGood()
    const base = current.base
    current.base = null
    if (!base) return
    const isGone = await db.supersede(base).catch(() => true)
    if (!isGone) void tellParted(current)
    windows.tell({ key: base.key, isGone })
  }

  /** Another window has renamed the plan that is on the table here, and this one has just written the old title over it. */
  const takeTitle = (current: Session, title: string) => {
    const rename = (plan: Plan) => setTitle(plan, title)
    if (session === current) store.edit(rename)
    else void drafts?.change(current.state.key, rename)
  }

  const onSettled = (plan: Plan) => {
    if (plan === seen) return
    if (store.opened.peek() !== opened) {
      void flush()
      void leave(session)
      session = newSession(null)
      opened = store.opened.peek()
      drawn = drawnWritten = null
    } else session.changed = true
    seen = plan
    timer ??= setTimeout(() => void flush(), gatherMs)
  }

  /** What is only begun is kept as well, and is on no plan: it is lost with the plan that it was begun on. */
  const onDrawn = (underWay: UnderWay | null) => {
    // What a plan that goes leaves under way goes with it.
    if (underWay === drawn || store.opened.peek() !== opened) return
    drawn = underWay
    if (underWay) session.changed = true
    timer ??= setTimeout(() => void flush(), gatherMs)
  }

  /** A plan that was only looked at leaves no draft behind. */
  const leave = async ({ changed, base, state, isWritten, isJoint }: Session) => {
    if (!changed && !base && isWritten && !isJoint) await drafts?.erase(state.key)
  }

  /** Puts a kept plan on the table. False where no plan can be made of it, or nothing is kept under that key. */
  const take = async (key: string): Promise<boolean> => {
    const found = await drafts?.load(key).catch(() => undefined)
    if (!found?.plan.ok || !drafts) return false
    if (found.base) await drafts.supersede(found.base).catch(() => false)
    await flush()
    await leave(session)
    session = newSession(found.state, found.doc)
    opened = seen = written = found.plan.value
    rememberLast(key)
    store.open(found.plan.value)
    drawn = drawnWritten = null
    store.takenUp.value = found.underWay
    return true
  }

  /** The plan that this window had, else the newest that can be read: whatever cannot is skipped, and said. */
  const takeLast = async () => {
    const kept = (await drafts?.list().catch(() => undefined)) ?? []
    const there = kept.filter(({ isRemoved }) => !isRemoved)
    const last = lastKey()
    const inTurn = [...there.filter(({ key }) => key === last), ...there.filter(({ key }) => key !== last)]
    let isAnyBad = inTurn.some(({ fault }) => fault !== '')
    for (const { key, fault } of inTurn) {
      if (fault !== '') continue
      if (await take(key)) break
      isAnyBad = true
    }
    if (isAnyBad) store.notice.value = NOTICES.unreadable
  }

  /** Says that a plan went two ways, where both are there. */
  const tellParted = async (current: Session) => {
    if (await drafts?.hasAnother(current.doc, current.state.key)) store.notice.value = NOTICES.parted
  }
  const windows = otherWindows<TakenOver>(name, ({ key, isGone }) => {
    if (key !== session.state.key || !session.isWritten) return
    store.notice.value = isGone ? NOTICES.elsewhere : NOTICES.parted
  })
  const isAtRisk = () =>
    store.notKept.value !== '' && session.changed && (seen !== store.inFile.peek() || drawn !== null)
  const late = new Promise<false>((done) => setTimeout(() => done(false), OPENING_MS))
  if (await Promise.race([connect(), late])) await takeLast()
  else if (!store.notKept.value) store.notKept.value = NOTICES.nowhere

  const unsubscribe = [
    whenPageGoes(() => void flush(), isAtRisk),
    store.settled.subscribe(onSettled),
    store.underWay.subscribe(onDrawn),
  ]

  return {
    list: async () => (await drafts?.list()) ?? null,
    open: async (key) => {
      if (!(await take(key))) store.notice.value = NOTICES.unreadable
    },
    remove: async (key) => drafts?.remove(key),
    bringBack: async (key) => drafts?.bringBack(key),
    erase: async (key) => drafts?.erase(key),
    textOf: async (key) => (await drafts?.textOf(key)) ?? '',
    openKey: () => (session.isWritten ? session.state.key : (session.base?.key ?? null)),
    openDoc: () => session.doc,
    shareDraft: (isJoint) => setJoint(session, isJoint),
    planOf: async (key) => {
      const found = await drafts?.load(key).catch(() => undefined)
      return found?.plan.ok ? found.plan.value : undefined
    },
    rename: async (key, title) => drafts?.change(key, (plan) => setTitle(plan, title)),
    keepAside: async (plan) => {
      try {
        await drafts?.save({ plan, state: { key: newKey(), revision: 1 }, doc: newKey() })
      } catch {
        store.notice.value = NOTICES.noRoomAside
        return false
      }
      return drafts !== null
    },
    ...versionKeeper(store, () => ({ drafts, doc: session.doc })),
    flush,
    stop: () => {
      isStopped = true
      for (const leaveOff of unsubscribe) leaveOff()
      clearTimeout(timer)
      windows.close()
      drafts?.close()
    },
  }
}

const nameOf = (error: unknown): string => (error instanceof Error ? error.name : '')
