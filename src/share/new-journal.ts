import { Journal } from '../journal/journal'
import type { Plan } from '../plan/plan'

/** A journal that begins with this plan. */
export const newJournal = (plan: Plan): Journal =>
  new Journal([...crypto.getRandomValues(new Uint8Array(12))].map((each) => each.toString(36)).join(''), plan)
