import { learnedFrom } from '../field/learned'
import { lineFields } from '../field/line-fields'
import { learnedRates, withLearnedRates } from '../materials/learned-rates'
import { leftToDo } from '../materials/left-to-do'
import { usedSpools } from '../materials/used-spools'
import type { FieldWork } from './field-work'

/** Everything that records tell a report: what was done, with which spools and how fast, what was read, and what is left to do. */
export const FIELD_WORK: FieldWork = {
  learn: learnedFrom,
  usedSpools,
  lineFields,
  ownHours: (plan, measured, laying, hoursAt) => {
    const planned = hoursAt(laying)
    const learned = learnedRates(plan, measured, planned.lines, laying)
    if (learned.length === 0) return planned
    const rates = learned.flatMap(({ what, kmPerHour }) => [what, kmPerHour])
    return { ...hoursAt(withLearnedRates(laying, ...rates)), learned }
  },
  leftToDo,
}
