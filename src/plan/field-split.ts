import { recordsOf } from './field-records'
import { freeId } from './free-id'
import type { LineId } from './id'
import type { FieldRecord, Plan } from './plan'
import { standingRecords } from './standing-records'

interface Halves {
  /** The first half keeps the line's id. */
  readonly first: LineId
  readonly second: LineId
  /** Wire of the whole line from its `from` to the joint, m. */
  readonly jointM: number
}

/** The records of a line that has become two: each goes with the wire that it is about, and one across the joint becomes two. */
export function withRecordsSplit(plan: Plan, halves: Halves): Plan {
  const records = recordsOf(plan)
  if (!records.some(({ line }) => line === halves.first)) return plan
  const taken = new Set(records.map(({ id }) => id))
  // Each half's wire is counted anew, so what is counted by an earlier way of the whole line is so no more.
  const now = new Map(standingRecords(plan).map((record) => [record.id, record]))
  const field = records.flatMap((written): readonly FieldRecord[] => {
    const record = now.get(written.id) ?? written
    return record.line === halves.first ? splitRecord(record, halves, plan.allowances.tailM, taken) : [record]
  })
  return { ...plan, field }
}

function splitRecord(
  record: FieldRecord,
  { second, jointM }: Halves,
  tailM: number,
  taken: Set<string>,
): readonly FieldRecord[] {
  // Both halves have a tail at the joint.
  const beyond = (wireM: number) => Math.max(0, wireM - jointM + tailM)
  switch (record.kind) {
    case 'laid':
    case 'tested':
    case 'recovered': {
      const { fromM, toM } = record
      if (toM <= jointM) return [record]
      if (fromM >= jointM) return [{ ...record, line: second, fromM: beyond(fromM), toM: beyond(toM) }]
      const rest = { ...record, id: freeId(record.id, taken), line: second, fromM: 0, toM: beyond(toM) }
      return [{ ...record, toM: jointM + tailM }, rest]
    }
    case 'reading': {
      const isBeyond = record.wireM > jointM
      const placed = isBeyond ? { ...record, line: second, wireM: beyond(record.wireM) } : record
      return [isBeyond === (record.toward === 'to') ? placed : { ...placed, stale: true }]
    }
    case 'fault':
    case 'mended':
    case 'note':
      return record.wireM !== undefined && record.wireM > jointM
        ? [{ ...record, line: second, wireM: beyond(record.wireM) }]
        : [record]
    case 'as-laid': {
      const { planned: _, wire: __, ...rest } = record
      return [rest]
    }
    default:
      return [record]
  }
}
