import type { Journal } from '../journal/journal'
import { journalOf, stateOf } from '../journal/journal-state'
import type { Plan } from '../plan/plan'
import { unmarked } from '../schema/exact-members'
import { isObject } from '../schema/schema'
import { formatPlan } from './format-plan'
import { planFingerprint } from './plan-fingerprint'

/** The member of a plan file that its journal travels in: a program that does not know it keeps it. */
const MEMBER = 'journal'

/** A plan that bears its journal. */
export function withJournal(plan: Plan, journal: Journal): Plan {
  const { unknown = {} } = plan
  const state = { of: planFingerprint(plan), ...stateOf(journal) }
  return { ...plan, unknown: { ...unknown, file: { ...unknown.file, [MEMBER]: state } } }
}

/** The text of a plan file that takes its journal along. */
export const formatWithJournal = (plan: Plan, journal: Journal): string =>
  formatPlan(withJournal(plan, journal))

export interface PlanWithJournal {
  /** Without the journal that its file has brought. */
  readonly plan: Plan
  /** Null where the file has none, or none that can be gone on with. */
  readonly journal: Journal | null
  /** Why a journal that came along is left out, in a sentence; empty where none is. */
  readonly said: string
}

/** A plan and the journal that its file has brought. A journal that is none never keeps a plan from opening. */
export function takeJournalOut(read: Plan): PlanWithJournal {
  const kept = read.unknown?.file?.[MEMBER]
  if (kept === undefined) return { plan: read, journal: null, said: '' }
  const carried: unknown = JSON.parse(unmarked(JSON.stringify(kept)))
  const { [MEMBER]: _, ...file } = read.unknown!.file!
  const { file: __, ...others } = read.unknown!
  const unknown = { ...others, ...(Object.keys(file).length > 0 && { file }) }
  const { unknown: ___, ...known } = read
  const plan: Plan = { ...known, ...(Object.keys(unknown).length > 0 && { unknown }) }
  const isOfPlan = isObject(carried) && carried.of === planFingerprint(plan)
  const journal = isOfPlan ? journalOf(plan, carried) : CHANGED
  return typeof journal === 'string' ? { plan, journal: null, said: journal } : { plan, journal, said: '' }
}

const CHANGED =
  'The plan was changed by a program that keeps no journal: the journal in its file no longer fits, and is left out.'
