import { crossingsOf } from '../hazard/crossings'
import { HAZARDS } from '../hazard/kinds'
import type { Line, Plan } from '../plan/plan'
import type { MeasuredLine } from './measured'
import { pointAtMapM, wireMAtGroundM } from './place-on-line'

/** A stretch of a line's wire, m from its `from` end. */
export interface WireStretch {
  readonly fromM: number
  readonly toM: number
}

/** The wire on each crossing of a line, and so much ground before and after it, m, where its kind keeps splices off. */
export function wireOnCrossings(
  plan: Plan,
  line: Line,
  measured: MeasuredLine,
  besideM: number,
): readonly WireStretch[] {
  const wireAt = (mapM: number) => wireMAtGroundM(measured, pointAtMapM(plan, measured, line, mapM).groundM)
  return crossingsOf(plan, line)
    .filter(({ kind }) => HAZARDS[kind].keepsSplicesOff)
    .map(({ distanceM, insideM }) => ({
      fromM: wireAt(distanceM - besideM),
      toM: wireAt(distanceM + insideM + besideM),
    }))
}
