import type { MeasuredLine } from '../measure/measured'
import { layAtWireM, pointAtWireM } from '../measure/place-on-line'
import { standingRecords } from '../plan/field-edits'
import type { LineId } from '../plan/id'
import type { Lay, Plan } from '../plan/plan'

/** How fast a crew has laid wire of one lay, and over how much of the ground that is known. */
export interface LayingPace {
  readonly lay: Lay
  readonly kmPerHour: number
  readonly groundM: number
  readonly hours: number
}

/** Between two records of one piece of work no more time than this has passed, h: else there was a rest, or another job. */
const LONGEST_H = 4
const SHORTEST_H = 1 / 60

/**
 * How fast wire was really laid, lay by lay: from each record of laid wire to the next one of the same hand on the same line, over the
 * ground between where they ended. Empty where nobody's records tell.
 */
export function layingPace(plan: Plan, measured: ReadonlyMap<LineId, MeasuredLine>): readonly LayingPace[] {
  const done = new Map<Lay, { groundM: number; hours: number }>()
  const last = new Map<string, { readonly toM: number; readonly hours: number }>()
  for (const record of standingRecords(plan)) {
    if (record.kind !== 'laid' || record.at === undefined) continue
    const [line, length] = [plan.lines.get(record.line), measured.get(record.line)]
    if (!line || !length) continue
    const hand = `${record.line}\n${record.by ?? ''}`
    const hours = Date.parse(record.at) / 3_600_000
    const before = last.get(hand)
    last.set(hand, { toM: record.toM, hours })
    const took = before ? hours - before.hours : 0
    if (!before || took < SHORTEST_H || took > LONGEST_H) continue
    const groundAt = (wireM: number) => pointAtWireM(plan, length, line, wireM).groundM
    const groundM = Math.abs(groundAt(record.toM) - groundAt(before.toM))
    const lay = layAtWireM(length, (record.toM + before.toM) / 2) ?? line.legs[0]!.lay
    const sum = done.get(lay) ?? { groundM: 0, hours: 0 }
    done.set(lay, { groundM: sum.groundM + groundM, hours: sum.hours + took })
  }
  return [...done]
    .filter(([, { groundM }]) => groundM > 0)
    .map(([lay, { groundM, hours }]) => ({ lay, groundM, hours, kmPerHour: groundM / 1000 / hours }))
}
