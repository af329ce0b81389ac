import { recordsOf } from '../plan/field-records'
import type { FieldRecord, Plan } from '../plan/plan'
import { canonical } from './canonical'

/** Ids that both hands gave to records of their own, and that name two different records. */
export const recordsOfOneId = (base: Plan, mine: Plan, theirs: Plan): readonly string[] => {
  const known = new Set(recordsOf(base).map(({ id }) => id))
  const own = new Map(recordsOf(mine).map((record) => [record.id, canonical(record)]))
  return recordsOf(theirs).flatMap((record) => {
    const other = own.get(record.id)
    return known.has(record.id) || other === undefined || other === canonical(record) ? [] : [record.id]
  })
}

/** The plan with one record under another id, at every place that names it. */
export const withRecordId = (plan: Plan, id: string, fresh: string): Plan => ({
  ...plan,
  field: recordsOf(plan).map((record): FieldRecord => {
    const own = record.id === id ? { ...record, id: fresh } : record
    return own.kind === 'undone' && own.record === id ? { ...own, record: fresh } : own
  }),
})
