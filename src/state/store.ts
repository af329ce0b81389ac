import { batch, computed, signal } from '@preact/signals'
import { BUILT_IN } from '../catalog/built-in'
import { type CatalogEntries, mergeCatalogs } from '../catalog/catalog'
import { forgetThings } from '../memo'
import { begin, commit, redo, retract, undo } from '../plan/history'
import { type EntryKind, NO_ENTRIES, offeredTo, takeKept } from '../plan/kept-entries'
import { EMPTY_PLAN, type Plan, type Station } from '../plan/plan'
import type { UnderWay } from '../plan/under-way'
import { ok, type Problem, type Result } from '../problem'
import { type FieldWork, NO_FIELD_WORK } from '../report/field-work'
import { reportInPart } from '../report/report-in-part'
import { reportWith } from '../report/report-with'
import { tongueOf } from '../words/tongue'
import { createFarState } from './far-state'
import { createFindings } from './findings'
import { createGroundState, NOTHING_BESIDE } from './ground-state'
import { createHand } from './hand'
import { keepLastGood, staleSentence } from './last-good'
import { createMapsState } from './maps-state'
import { createOpenThings } from './open-things'
import { createPreferences } from './preferences'
import type { Release } from './release'
import { isOn, type Selection } from './selection'
import { createShelfState } from './shelf-state'
import { typingNow } from './typing'

export type Tool = 'select' | 'station' | 'line' | 'hazard' | 'measure'

/** What was just done, in a sentence, and what takes it back. */
export interface Deed {
  readonly sentence: string
  /** On the button that takes it back. */
  readonly back: { readonly words: string; readonly act: () => void }
}

export type Store = ReturnType<typeof createStore>

/** The one place where state lives. Read down the page to see how data flows. */
export function createStore(
  initial: Plan = EMPTY_PLAN,
  follow: (work: () => void) => void = (work) => work(),
) {
  const history = signal(begin(initial))
  const groundState = createGroundState()
  /** What makes something of records: loaded with the first plan that has any. */
  const fieldWork = signal<FieldWork>(NO_FIELD_WORK)
  const selection = signal<Selection>(null)
  const tool = signal<Tool>('select')
  /** Look, and change nothing. */
  const locked = signal(false)
  const preferences = createPreferences()
  const { units } = preferences
  /** The plan as it was opened: another value means another document, not an edit of this one. */
  const opened = signal(initial)
  /** One sentence that the person must read, until they have put it away; empty for none. */
  const notice = signal('')
  /** Why the last changes are not kept in this browser, in a sentence; empty while they are. */
  const notKept = signal('')
  const release = signal<Release>({ name: '', offline: 'coming', isNewerReady: false })
  /** The plan as a file last took it: what is in a file is not lost with the page. */
  const inFile = signal<Plan | null>(null)
  /** What the hand has begun to draw: kept with the plan. */
  const underWay = signal<UnderWay | null>(null)
  /** What was under way when the plan was last left, to be taken up again by its tool. */
  const takenUp = signal<UnderWay | null>(null)
  /** What went wrong that nobody foresaw, in a sentence; empty for nothing. */
  const failure = signal('')
  /** The last deed that was told, and the plan as it left it: another plan means that something else was done since. */
  const told = signal<
    (Deed & { readonly after: Plan; readonly takesBack: boolean; readonly underLock: boolean }) | null
  >(null)
  const { plan, draft, letGo, ...hand } = createHand(history, locked, follow)
  /** Puts another state of the plan in the place of this one; what is no longer on it cannot stay selected. */
  const take = (next: typeof history.value) => {
    batch(() => {
      letGo()
      history.value = next
      if (!isOn(next.present, selection.peek())) selection.value = null
    })
  }
  /** Whether the plan may be changed; under the lock that it may not is told. */
  const mayEdit = (): boolean => {
    const act = () => {
      locked.value = false
    }
    if (locked.peek()) tell(LOCKED.message, { words: 'Unlock', act })
    return !locked.peek()
  }
  /** One edit, one undo step; a stretch of typing is one step as well, reckoned from before its first letter. */
  const tryEdit = (change: (plan: Plan) => Result<Plan>): readonly Problem[] => {
    if (!mayEdit()) return [LOCKED]
    const typing = typingNow()
    const before = typing?.made === history.value.present ? retract(history.value) : history.value
    const result = change(before.present)
    if (!result.ok) return result.problems
    take(commit(before, result.value))
    if (typing) {
      const made = history.value === before ? null : history.value.present
      typing.made = made
      typing.takeBack = () => {
        if (history.value.present === made) take(retract(history.value))
      }
    }
    return []
  }
  const tell = (sentence: string, back?: Deed['back']) => {
    told.value = {
      sentence,
      back: back ?? { words: 'Undo', act: stepBack },
      after: history.value.present,
      takesBack: back !== undefined,
      underLock: locked.peek(),
    }
  }
  const deed = computed(() => {
    const last = told.value
    return last?.after === history.value.present && last.underLock === locked.value ? last : null
  })
  /** How a state that one goes back to is mended where others have changed the plan meanwhile; null while one is alone. */
  let mended: ((back: Plan, from: Plan) => Plan) | null = null
  const goTo = (next: typeof history.value) => {
    told.value = null
    const { present } = history.value
    take(mended && next.present !== present ? { ...next, present: mended(next.present, present) } : next)
  }
  const stepBack = () => goTo(undo(history.value))
  const catalog = computed(() => mergeCatalogs(BUILT_IN, plan.value.catalog))
  /** A person's own entries of the catalog, kept in this browser for every plan, and why they are not kept; empty where all is well. */
  const keptEntries = signal<CatalogEntries>(NO_ENTRIES)
  const keptEntriesFailure = signal('')
  /** All of a kind that can be chosen for this plan: what it knows, and what is kept for every plan. */
  const choicesOf = <K extends EntryKind>(kind: K) =>
    computed(() => [
      ...(catalog.value[kind].values() as Iterable<CatalogEntries[K][number]>),
      ...offeredTo(plan.value, keptEntries.value, kind),
    ])
  /** How the one who looks reads figures and names. */
  const tongue = computed(() => tongueOf(plan.value, units.value))
  let reportedDocument = initial
  const attempt = keepLastGood(
    () => {
      const settled = draft.value ? history.value.present : undefined
      const report = reportWith(fieldWork.value, plan.value, groundState.ground.value, settled)
      reportedDocument = opened.peek()
      return report
    },
    // The figures of another document are worse than none.
    (last) => reportInPart(plan.value, opened.peek() === reportedDocument ? last : undefined),
  )
  const report = attempt.value

  return {
    plan,
    catalog,
    keptEntries,
    keptEntriesFailure,
    choices: { wires: choicesOf('wires'), sets: choicesOf('sets'), supplies: choicesOf('supplies') },
    /** A plan with the entry that was chosen for it in its catalog, where that is one of those kept for every plan. */
    withChosen: (before: Plan, kind: EntryKind, id: string | null): Plan =>
      takeKept(before, keptEntries.peek(), kind, id),
    report,
    fieldWork,
    tongue,
    /** Why the report is not of the plan as it is now, in a sentence; empty where it is. */
    reportFailure: computed(() => staleSentence(attempt.failure.value, opened.value === reportedDocument)),
    failure,
    ...groundState,
    selection,
    tool,
    locked,
    ...preferences,
    ...createMapsState(),
    ...hand,
    ...createShelfState(),
    ...createOpenThings(),
    ...createFindings(),
    ...createFarState(),
    opened,
    notice,
    notKept,
    release,
    inFile,
    underWay,
    takenUp,
    /** The plan as last settled: what is saved. */
    settled: computed(() => history.value.present),
    canUndo: computed(() => history.value.past.length > 0 || deed.value?.takesBack === true),
    canRedo: computed(() => history.value.future.length > 0),

    edit: (change: (plan: Plan) => Plan) => void tryEdit((plan) => ok(change(plan))),
    /** An edit that may be refused: then the plan stays, and the problems are given back. */
    tryEdit,
    mayEdit,
    /** What was just done, with the way back at hand; null as soon as something else is done, or it is put away. */
    deed: computed((): Deed | null => deed.value),
    /** Tells what an edit has just done, or, with a way back of its own, what was done to no plan: undo takes that back first. */
    tell,
    putDeedAway: () => {
      told.value = null
    },
    undo: () => {
      if (!mayEdit()) return
      const last = deed.peek()
      if (!last?.takesBack) return stepBack()
      told.value = null
      last.back.act()
    },
    redo: () => {
      if (!mayEdit()) return
      goTo(redo(history.value))
    },
    /** What others did: the plan as it is now, and how each state that one can go back to takes that in. No step of one's own. */
    absorb: (present: Plan, change: (plan: Plan) => Plan) => {
      const { past, future } = history.value
      take({ past: past.slice(-MOST_SHARED_STEPS).map(change), present, future: future.map(change) })
    },
    mendBack: (how: typeof mended) => {
      mended = how
    },
    /** Another plan takes the place of this one; undo starts anew. */
    open: (next: Plan) => {
      forgetThings()
      const { ground } = groundState
      const lies = ({ position: [lonDeg, latDeg] }: Station) =>
        ground.peek()?.heightM(lonDeg, latDeg) !== undefined
      batch(() => {
        // Ground that lies elsewhere goes at once: all would be reckoned with it first, and once more when it is found out.
        if (![...next.stations.values()].some(lies)) ground.value = undefined
        letGo()
        locked.value = false
        selection.value = null
        groundState.cursor.value = null
        groundState.suggested.value = []
        groundState.besideSuggested.value = NOTHING_BESIDE
        history.value = begin(next)
        // Last, so that who follows it comes first: the map is fitted to the plan before the plan is drawn on it.
        opened.value = next
      })
    },
  }
}

/** Each of them is gone over whenever others have changed something. */
const MOST_SHARED_STEPS = 30

const LOCKED = { code: 'locked', at: '', message: 'The plan is locked, and stays as it is' } as const
