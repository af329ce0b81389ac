import type { LineId } from './id'
import type { FieldRecord, Plan } from './plan'

const NONE: readonly FieldRecord[] = []

/** All that was recorded, undone or not, in the order in which it came in. */
export const recordsOf = ({ field = NONE }: Pick<Plan, 'field'>): readonly FieldRecord[] => field

/** The records without those of lines that are gone, nor those that undid one of them. */
export function recordsWithout(plan: Plan, gone: ReadonlySet<LineId>): Pick<Plan, 'field'> {
  const left = new Map(recordsOf(plan).map((each) => [each.id, each]))
  for (const { id, line } of recordsOf(plan)) if (gone.has(line)) left.delete(id)
  for (let size = -1; size !== left.size; ) {
    size = left.size
    for (const each of left.values())
      if (each.kind === 'undone' && !left.has(each.record)) left.delete(each.id)
  }
  return left.size > 0 ? { field: [...left.values()] } : {}
}
