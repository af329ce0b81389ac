import { recordsOf } from '../plan/field-records'
import type { FieldRecord, Plan } from '../plan/plan'
import { canonical } from './canonical'

/**
 * What was laid and read, of both hands: records are only ever added, so none is lost. Those that both knew come first, in their order;
 * after them the new ones, each hand's in its own order, the two threaded by time.
 *
 * Records of a line that one hand took out are gone with it, unless the line stays: who mends the plan sees to these.
 */
export function mergeRecords(base: Plan, mine: Plan, theirs: Plan): readonly FieldRecord[] {
  const known = new Set(recordsOf(base).map(({ id }) => id))
  const all = new Map<string, FieldRecord>()
  for (const hand of [base, mine, theirs]) {
    for (const record of recordsOf(hand)) {
      const before = all.get(record.id)
      all.set(record.id, before && known.has(record.id) ? newerOf(before, record, base) : record)
    }
  }
  const old = [...known].map((id) => all.get(id)!)
  const newOf = (hand: Plan) => recordsOf(hand).filter(({ id }) => !known.has(id))
  return [...old, ...threaded(newOf(mine), newOf(theirs))]
}

/** Two lists as one, each in its own order: of the two that come next, the earlier first. */
function threaded(mine: readonly FieldRecord[], theirs: readonly FieldRecord[]): readonly FieldRecord[] {
  const merged = new Map<string, FieldRecord>()
  for (let [m, t] = [0, 0]; m < mine.length || t < theirs.length; ) {
    const [own, other] = [mine[m], theirs[t]]
    const isOwn = !other || (own !== undefined && orderOf(own) < orderOf(other))
    const next = isOwn ? own! : other
    if (isOwn) m++
    else t++
    merged.set(next.id, next)
  }
  return [...merged.values()]
}

const orderOf = ({ at = '', id }: FieldRecord): string => `${at} ${id}`

/** A record moves to another line where its line was cut in two. */
function newerOf(a: FieldRecord, b: FieldRecord, base: Plan): FieldRecord {
  const [first, second] = [canonical(a), canonical(b)]
  if (first === second) return a
  const old = canonical(recordsOf(base).find(({ id }) => id === a.id))
  if (first === old) return b
  if (second === old) return a
  return first > second ? a : b
}

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
