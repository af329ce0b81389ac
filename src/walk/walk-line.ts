import { declinationAt } from '../measure/declination'
import { measurePlan } from '../measure/measure-line'
import type { MeasuredLine } from '../measure/measured'
import type { LineId } from '../plan/id'
import { type Line, lineNumber, type Plan, vertexOf } from '../plan/plan'
import { type StandingRecord, standingRecords } from '../plan/standing-records'
import type { ReportLine } from '../report/report'
import { type Toward, type WalkMark, walkMarks } from '../report/walk-marks'
import type { Store } from '../state/store'
import type { WalkTongue } from '../words/walk-words'

/** The line that is walked, with all that the screen says of it. */
export interface WalkLine {
  readonly plan: Plan
  readonly line: Line
  readonly measured: ReportLine
  readonly lengths: ReadonlyMap<LineId, MeasuredLine>
  /** To which end one walks, and all that one comes to on the way, in its order. */
  readonly toward: Toward
  readonly marks: readonly WalkMark[]
  readonly tags: readonly Extract<WalkMark, { readonly code: 'tag' }>[]
  /** What was recorded of it and stands, in its order. */
  readonly records: readonly StandingRecord[]
  readonly tongue: WalkTongue
  /** How far ahead of a running distance along the ground another lies, as one walks, m: less than 0 behind. */
  readonly aheadM: (fromGroundM: number, toGroundM: number) => number
}

/** Null where the line is gone. */
export function walkLine(store: Store, id: LineId, toward: Toward): WalkLine | null {
  const plan = store.settled.value
  const line = plan.lines.get(id)
  const measured = store.report.value.lines.find((each) => each.id === id)
  if (!line || !measured) return null
  const marks = walkMarks(plan, line, measured, toward)
  const turn = declinationAt(vertexOf(plan, line, 0), new Date().toISOString().slice(0, 10))
  const eastDeg = turn.ok ? turn.value.eastDeg : 0
  return {
    ...{ plan, line, measured, marks, toward },
    aheadM: (fromM, toM) => (toward === 'to' ? toM - fromM : fromM - toM),
    lengths: measurePlan(plan, store.ground.value),
    tags: marks.filter((mark) => mark.code === 'tag'),
    records: standingRecords(plan).filter((record) => record.line === id),
    tongue: {
      say: store.tongue.value,
      lineNumber: lineNumber(plan, id),
      north: turn.ok ? 'magnetic' : 'true',
      bearing: (trueDeg) => trueDeg - eastDeg,
    },
  }
}
