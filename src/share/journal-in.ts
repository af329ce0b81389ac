import { parsePlan } from '../files/parse-plan'
import type { Journal } from '../journal/journal'
import { journalOf } from '../journal/journal-state'

/** The journal of which a plan's text and a state were kept or sent; null where they are not what they should be. */
export function journalIn({
  plan,
  state,
}: {
  readonly plan?: unknown
  readonly state?: unknown
}): Journal | null {
  const read = typeof plan === 'string' ? parsePlan(plan) : undefined
  const journal = read?.ok ? journalOf(read.value, state) : undefined
  return journal === undefined || typeof journal === 'string' ? null : journal
}
