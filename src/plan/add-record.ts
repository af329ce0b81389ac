import { bad, ok, type Result } from '../problem'
import { faultsOf } from '../schema/faults'
import { asFileHolds } from './as-file-holds'
import { recordsOf } from './field-records'
import { RECORD, valueFault } from './field-schema'
import type { FieldRecord, Plan } from './plan'

/**
 * Adds a record. Refused where a figure of it is out of range or its line is not in the plan; throws where its id is taken.
 */
export function addRecord(plan: Plan, record: FieldRecord): Result<Plan> {
  const records = recordsOf(plan)
  if (records.some(({ id }) => id === record.id))
    throw new Error(`the plan has a record "${record.id}" already`)
  const known = { line: new Set(plan.lines.keys()), record: new Set(records.map(({ id }) => id)) }
  const faults = faultsOf(RECORD, record, '', known)
  if (faults.length > 0) return bad(...faults)
  if ('fromM' in record && record.fromM > record.toM) {
    const message = `The stretch begins at ${record.fromM} m and ends at ${record.toM} m: give the nearer end first.`
    return bad({ code: 'turned-round', at: 'toM', message })
  }
  const negative = valueFault(record.kind === 'reading' ? record : {})
  if (negative) return bad({ code: 'out-of-range', at: 'value', message: negative })
  return ok({ ...plan, field: [...records, asFileHolds(record)] })
}

/** Adds a record that another no longer counts. One that undid another brings it back so. */
export function undoRecord(
  plan: Plan,
  id: string,
  by: { readonly id: string; readonly at?: string; readonly by?: string },
): Plan {
  const { line } = recordsOf(plan).find((each) => each.id === id) ?? {}
  if (line === undefined) return plan
  const done = addRecord(plan, { ...by, line, kind: 'undone', record: id })
  if (!done.ok) throw new Error(done.problems[0]!.message)
  return done.value
}
