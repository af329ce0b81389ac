import type { LineId } from './id'
import type { FieldRecord, Plan } from './plan'

const NONE: readonly FieldRecord[] = []

/** All that was recorded, undone or not, in the order in which it came in. */
export const recordsOf = ({ field = NONE }: Pick<Plan, 'field'>): readonly FieldRecord[] => field

/** Some of the records, and of those that undo one the ones whose record is among them. */
export function recordsWhere(plan: Plan, isWanted: (record: FieldRecord) => boolean): readonly FieldRecord[] {
  const left = new Map(recordsOf(plan).flatMap((each) => (isWanted(each) ? [[each.id, each]] : [])))
  for (let size = -1; size !== left.size; ) {
    size = left.size
    for (const each of left.values())
      if (each.kind === 'undone' && !left.has(each.record)) left.delete(each.id)
  }
  return [...left.values()]
}

/** The records without those of lines that are gone, nor those that undid one of them. */
export function recordsWithout(plan: Plan, gone: ReadonlySet<LineId>): Pick<Plan, 'field'> {
  const field = recordsWhere(plan, ({ line }) => !gone.has(line))
  return field.length > 0 ? { field } : {}
}
