import type { LineId } from './id'
import type { Line, Plan } from './plan'
import { type StandingRecord, standingRecords } from './standing-records'

type AsLaid = Extract<StandingRecord, { readonly kind: 'as-laid' }>

/** The last record of a line that led it as it was really laid; undefined where none stands. */
export const asLaidOf = (plan: Plan, line: LineId): AsLaid | undefined =>
  standingRecords(plan).findLast((each): each is AsLaid => each.kind === 'as-laid' && each.line === line)

/** A line as it was planned, before it was led as it was laid; undefined where it lies as it was planned. */
export function asPlanned(plan: Plan, line: Line): Line | undefined {
  const first = standingRecords(plan).find(
    (each): each is AsLaid => each.kind === 'as-laid' && each.line === line.id && each.planned !== undefined,
  )
  return first && { ...line, ...first.planned! }
}
