import type { Wire } from '../catalog/wire'
import { pointOnLeg } from '../geo/leg-length'
import { type OverheadLeg, overheadSpans } from '../measure/overhead-spans'
import { type Line, type Plan, verticesOf } from '../plan/plan'
import type { Ground } from '../terrain/ground'

/** A line of which legs hang. */
export interface HungLine {
  readonly plan: Plan
  readonly line: Line
  /** Its legs, measured. */
  readonly legs: readonly { readonly mapM: number }[]
  readonly wire: Wire | undefined
  readonly ground: Ground | undefined
}

/** One leg as the plan has it hang; undefined where it has no sag to hang by. */
export function overheadLegOf(
  { plan, line, legs, wire, ground }: HungLine,
  legIndex: number,
): OverheadLeg | undefined {
  const leg = line.legs[legIndex]!
  const { mapM: lengthM } = legs[legIndex]!
  if (!wire || !(lengthM > 0)) return undefined
  const vertices = verticesOf(plan, line)
  const groundAt = (distanceM: number) =>
    ground?.heightM(...pointOnLeg(vertices[legIndex]!, vertices[legIndex + 1]!, distanceM / lengthM))
  const sagPct = leg.sagPct ?? plan.allowances.sagPct
  const result = overheadSpans(
    { lengthM, wire, tempC: plan.wireTempC, sagPct, supportM: leg.supportM, spanM: leg.spanM },
    groundAt,
  )
  return result.ok ? result.value : undefined
}
