import type { Position } from '../geo/position'
import { onGlobe, samePosition } from '../geo/position'
import { bad, ok, type Result } from '../problem'
import { type Limit, limitFault } from '../schema/limit'
import type { LineId } from './id'
import { LIMITS } from './limits'
import type { Lay, Leg, Line, Plan } from './plan'
import { withLine } from './with-feature'

/** Bends a leg: it becomes two, both laid as the one was. Its note stays with the first. */
export function insertBend(plan: Plan, id: LineId, legIndex: number, position: Position): Plan {
  const line = plan.lines.get(id)
  const leg = line?.legs[legIndex]
  if (!line || !leg) return plan
  const { note: _, unknown: __, ...second } = leg
  return withLine(plan, {
    ...line,
    bends: line.bends.toSpliced(legIndex, 0, onGlobe(position)),
    legs: line.legs.toSpliced(legIndex + 1, 0, second),
  })
}

export function moveBend(plan: Plan, id: LineId, bendIndex: number, to: Position): Plan {
  const line = plan.lines.get(id)
  const bend = line?.bends[bendIndex]
  const position = onGlobe(to)
  if (!line || !bend || samePosition(bend, position)) return plan
  return withLine(plan, { ...line, bends: line.bends.with(bendIndex, position) })
}

/** Straightens a line at a bend: the two legs there become one, laid as the first of them was. */
export function removeBend(plan: Plan, id: LineId, bendIndex: number): Plan {
  const line = plan.lines.get(id)
  if (!line?.bends[bendIndex]) return plan
  return withLine(plan, {
    ...line,
    bends: line.bends.toSpliced(bendIndex, 1),
    legs: line.legs.toSpliced(bendIndex + 1, 1),
  })
}

export function setLays(plan: Plan, id: LineId, legIndices: readonly number[], lay: Lay): Plan {
  const picked = new Set(legIndices)
  return changeLegs(plan, id, (leg, index) => (picked.has(index) && leg.lay !== lay ? { ...leg, lay } : leg))
}

/** Slack of one leg, %; undefined gives it back to the allowances. */
export const setLegSlack = (plan: Plan, id: LineId, legIndex: number, slackPct?: number): Result<Plan> =>
  setLegFigure(plan, id, legIndex, 'slackPct', LIMITS.legSlackPct, slackPct)

/** Sag of one leg, % of its span; undefined gives it back to the allowances. */
export const setLegSag = (plan: Plan, id: LineId, legIndex: number, sagPct?: number): Result<Plan> =>
  setLegFigure(plan, id, legIndex, 'sagPct', LIMITS.legSagPct, sagPct)

/** Height of one overhead leg's supports, m; undefined gives it back to the usual. */
export const setLegSupport = (plan: Plan, id: LineId, legIndex: number, supportM?: number): Result<Plan> =>
  setLegFigure(plan, id, legIndex, 'supportM', LIMITS.legSupportM, supportM)

/** Distance between one overhead leg's supports, m; undefined gives it back to the usual. */
export const setLegSpan = (plan: Plan, id: LineId, legIndex: number, spanM?: number): Result<Plan> =>
  setLegFigure(plan, id, legIndex, 'spanM', LIMITS.legSpanM, spanM)

function setLegFigure(
  plan: Plan,
  id: LineId,
  legIndex: number,
  name: 'slackPct' | 'sagPct' | 'supportM' | 'spanM',
  limit: Limit,
  value: number | undefined,
): Result<Plan> {
  const fault = value === undefined ? undefined : limitFault(limit, value)
  if (fault) return bad({ code: 'out-of-range', at: id, message: fault })
  return ok(
    changeLegs(plan, id, (leg, index) => {
      if (index !== legIndex || leg[name] === value) return leg
      const { [name]: _, ...others } = leg
      return value === undefined ? others : { ...others, [name]: value + 0 }
    }),
  )
}

/** An empty note is none. */
export const noteLeg = (plan: Plan, id: LineId, legIndex: number, note: string): Plan =>
  changeLegs(plan, id, (leg, index) => {
    if (index !== legIndex || (leg.note ?? '') === note) return leg
    const { note: _, ...others } = leg
    return note === '' ? others : { ...others, note }
  })

function changeLegs(plan: Plan, id: LineId, change: (leg: Leg, index: number) => Leg): Plan {
  const line: Line | undefined = plan.lines.get(id)
  if (!line) return plan
  const legs = line.legs.map(change)
  return legs.every((leg, index) => leg === line.legs[index]) ? plan : withLine(plan, { ...line, legs })
}
