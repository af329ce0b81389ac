import { recordsOf } from './field-records'
import type { FieldRecord, Plan } from './plan'

export const hasPicture = (record: FieldRecord): boolean => 'photo' in record && record.photo !== undefined

/** A record without its picture: nothing else of it is another. */
export function withoutPicture(record: FieldRecord): FieldRecord {
  if (!('photo' in record)) return record
  const { photo: _, ...bare } = record
  return bare
}

/**
 * A plan with the pictures that another has to records of both: a plan that goes by a link or by codes leaves them behind. The very plan where
 * none is missing.
 */
export function withPictures(plan: Plan, from: Plan): Plan {
  const pictured = new Map(
    recordsOf(from).flatMap((record) => (hasPicture(record) ? [[record.id, record] as const] : [])),
  )
  if (pictured.size === 0) return plan
  const field = recordsOf(plan).map((record): FieldRecord => {
    const other = pictured.get(record.id)
    const isSame = other && !hasPicture(record) && other.kind === record.kind && other.line === record.line
    return isSame && 'photo' in other ? ({ ...record, photo: other.photo } as FieldRecord) : record
  })
  return field.some((record, k) => record !== recordsOf(plan)[k]) ? { ...plan, field } : plan
}
