import type { MeasuredLine } from '../measure/measured'
import { layAtWireM, pointAtWireM } from '../measure/place-on-line'
import type { LineId } from '../plan/id'
import type { Lay, Plan } from '../plan/plan'
import { standingRecords } from '../plan/standing-records'

/** A piece of work whose time is known: from one record of it to the next of the same hand on the same line. */
export interface Spell {
  readonly line: LineId
  /** What was done: how wire was laid, or that it was taken up. */
  readonly what: Lay | 'recovery'
  readonly groundM: number
  readonly hours: number
}

/** Between two records of one piece of work no more time than this has passed, h: else there was a rest, or another job. */
const LONGEST_H = 4
const SHORTEST_H = 1 / 60

/** How long wire that was laid or taken up has really taken, as far as times and places of records tell it. */
export function laidSpells(plan: Plan, measured: ReadonlyMap<LineId, MeasuredLine>): readonly Spell[] {
  const spells: Spell[] = []
  const last = new Map<string, { readonly atM: number; readonly hours: number }>()
  for (const record of standingRecords(plan)) {
    if ((record.kind !== 'laid' && record.kind !== 'recovered') || record.at === undefined) continue
    const [line, length] = [plan.lines.get(record.line), measured.get(record.line)]
    if (!line || !length) continue
    const hand = `${record.kind}\n${record.line}\n${record.by ?? ''}`
    const hours = Date.parse(record.at) / 3_600_000
    const before = last.get(hand)
    // Whoever comes from the far end stands where his stretch begins.
    const isBackwards = before !== undefined && record.fromM < before.atM && record.toM <= before.atM
    const atM = isBackwards ? record.fromM : record.toM
    last.set(hand, { atM, hours })
    const took = before ? hours - before.hours : 0
    if (!before || took < SHORTEST_H || took > LONGEST_H) continue
    const groundAt = (wireM: number) => pointAtWireM(plan, length, line, wireM).groundM
    const groundM = Math.abs(groundAt(atM) - groundAt(before.atM))
    const lay = layAtWireM(length, (atM + before.atM) / 2) ?? line.legs[0]!.lay
    if (groundM > 0)
      spells.push({
        ...{ line: record.line, groundM, hours: took },
        what: record.kind === 'laid' ? lay : 'recovery',
      })
  }
  return spells
}
