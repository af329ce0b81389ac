import type { Plan } from '../plan/plan'
import type { Ground } from '../terrain/ground'
import { FIELD_WORK } from './from-the-field'
import type { Report } from './report'
import { reportWith } from './report-with'

/**
 * The report of a checked plan: lengths, figures and verdicts of every circuit, spools and cautions. Remedies are left empty:
 * they are searched on demand (see remedies).
 *
 * @param ground elevations, where they are known
 * @param settled while a hand drags, the plan from before: see `planSpools`
 */
export const reportPlan = (plan: Plan, ground?: Ground, settled?: Plan): Report =>
  reportWith(FIELD_WORK, plan, ground, settled)
