import { EMPTY_PLAN, type Plan } from '../plan/plan'
import { NO_FIELD_WORK } from './field-work'
import type { Report } from './report'
import { reportWith } from './report-with'

/** What of an older report still belongs to a plan: no figure of a line or circuit that is gone. Without one, a report of nothing. */
export function reportInPart(plan: Plan, before: Report | undefined): Report {
  const report = before ?? reportWith(NO_FIELD_WORK, EMPTY_PLAN)
  return {
    ...report,
    title: plan.title,
    lines: report.lines.filter(({ id }) => plan.lines.has(id)),
    circuits: report.circuits.filter(({ id }) => plan.circuits.has(id)),
  }
}
