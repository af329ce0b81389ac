import { memoryOfEach } from '../memo'
import { recordsOf } from './field-records'
import type { LineId } from './id'
import type { FieldRecord, Plan } from './plan'

export type StandingRecord = Exclude<FieldRecord, { readonly kind: 'undone' }>

const standing = memoryOfEach<readonly FieldRecord[], readonly StandingRecord[]>()

/**
 * The records that count: those that no further one undid. Where a line was led another way since, as it was really laid, their metres of
 * wire are those of the line as it is now.
 */
export const standingRecords = (plan: Pick<Plan, 'field'>): readonly StandingRecord[] => {
  const records = recordsOf(plan)
  return standing(records, [], () => standingOf(records))
}

function standingOf(records: readonly FieldRecord[]): readonly StandingRecord[] {
  const undoneAt = new Map<string, number>()
  const isUndone = new Set<string>()
  for (let at = records.length - 1; at >= 0; at--) {
    const record = records[at]!
    if (record.kind !== 'undone' || isUndone.has(record.id)) continue
    isUndone.add(record.record)
    undoneAt.set(record.record, Math.max(at, undoneAt.get(record.record) ?? 0))
  }
  const ways = records.flatMap((record, at): Rewired[] =>
    record.kind === 'as-laid' && record.wire
      ? [{ line: record.line, wire: record.wire, at, until: undoneAt.get(record.id) }]
      : [],
  )
  return records.flatMap((each, at) =>
    each.kind === 'undone' || isUndone.has(each.id) ? [] : [rewired(each, at, ways)],
  )
}

/** A line that was led another way, from one place of the list of records on, and perhaps back again from another on. */
interface Rewired {
  readonly line: LineId
  readonly wire: readonly (readonly [beforeM: number, nowM: number])[]
  readonly at: number
  readonly until: number | undefined
}

/** A record with its metres of wire as they are counted now. */
function rewired(record: StandingRecord, at: number, ways: readonly Rewired[]): StandingRecord {
  let now = record
  for (const { line, wire, at: since, until } of ways) {
    if (line !== record.line) continue
    if (until === undefined && at < since) now = withWire(now, (m) => throughPairs(wire, m))
    if (until !== undefined && at > since && at < until) {
      const back = wire.map(([beforeM, nowM]) => [nowM, beforeM] as const)
      now = withWire(now, (m) => throughPairs(back, m))
    }
  }
  return now
}

function withWire(record: StandingRecord, moved: (wireM: number) => number): StandingRecord {
  switch (record.kind) {
    case 'laid':
    case 'tested':
    case 'recovered':
      return { ...record, fromM: moved(record.fromM), toM: moved(record.toM) }
    case 'reading':
      return { ...record, wireM: moved(record.wireM) }
    case 'fault':
    case 'mended':
    case 'note':
      return record.wireM === undefined ? record : { ...record, wireM: moved(record.wireM) }
    default:
      return record
  }
}

/** Straight on from pair to pair; beyond the last, as far beyond it. */
function throughPairs(pairs: Rewired['wire'], m: number): number {
  let [fromM, toM] = [0, 0]
  for (const [beforeM, nowM] of pairs) {
    if (m <= beforeM) return beforeM > fromM ? toM + ((m - fromM) / (beforeM - fromM)) * (nowM - toM) : nowM
    ;[fromM, toM] = [beforeM, nowM]
  }
  return toM + (m - fromM)
}
