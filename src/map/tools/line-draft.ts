import type { Position } from '../../geo/position'
import { type NewIds, standAt } from '../../measure/stand-at'
import { type Equipment, equipLine } from '../../plan/equip-line'
import type { CircuitId, LineId } from '../../plan/id'
import { setLays } from '../../plan/leg-edits'
import { addLine } from '../../plan/line-edits'
import type { Place } from '../../plan/place'
import type { Lay, Plan } from '../../plan/plan'
import { newCircuitId, newLineId, newStationId } from '../../state/new-id'

/** A line under way. Its ids are fixed at the start, so that what is shown and what is kept are the same line. */
export interface LineDraft {
  readonly start: Place
  readonly lineId: LineId
  readonly circuitId: CircuitId
  /** Of the stations that come to stand at its ends, where none stand yet. */
  readonly atStart: NewIds
  readonly atEnd: NewIds
  readonly bends: readonly Position[]
  /** How the leg up to each bend is laid. */
  readonly lays: readonly Lay[]
}

const newIds = (plan: Plan): NewIds => ({ station: newStationId(plan), secondHalf: newLineId(plan) })

export const beginLine = (plan: Plan, start: Place): LineDraft => ({
  start,
  lineId: newLineId(plan),
  circuitId: newCircuitId(plan),
  atStart: newIds(plan),
  atEnd: newIds(plan),
  bends: [],
  lays: [],
})

export const withBend = (draft: LineDraft, bend: Position, lay: Lay): LineDraft => ({
  ...draft,
  bends: [...draft.bends, bend],
  lays: [...draft.lays, lay],
})

export const withoutLastBend = (draft: LineDraft): LineDraft => ({
  ...draft,
  bends: draft.bends.slice(0, -1),
  lays: draft.lays.slice(0, -1),
})

/** Where a place lies. */
export const positionAt = ({ stations }: Plan, place: Place): Position =>
  place.kind === 'station' ? stations.get(place.id)!.position : place.position

/** Whether there is still what a line begins on: undo may have taken it away from under it. */
export function stillStands({ stations, lines }: Plan, { start }: LineDraft): boolean {
  if (start.kind === 'station') return stations.has(start.id)
  return start.kind === 'ground' || lines.has(start.line)
}

/** Whether a line would end at the station where it begins. */
export const isBack = ({ start }: LineDraft, end: Place): boolean =>
  start.kind === 'station' && end.kind === 'station' && end.id === start.id

export interface LineMake extends Equipment {
  readonly wire: string
  /** How the last leg is laid. */
  readonly lay: Lay
}

/**
 * The plan with the line as it would be if it ended at a place, its new stations and joints with it, and telephones at its new ends. The plan
 * itself where the line would end at the station where it starts.
 */
export function drawLine(
  plan: Plan,
  { start, lineId, circuitId, atStart, atEnd, bends, lays }: LineDraft,
  end: Place,
  { wire, lay, ...equipment }: LineMake,
): Plan {
  const from = standAt(plan, start, atStart)
  const to = standAt(from.plan, end, atEnd)
  if (from.station === to.station) return plan
  const line = { id: lineId, newCircuitId: circuitId, from: from.station, to: to.station, bends, wire, lay }
  const drawn = lays.reduce((next, each, leg) => setLays(next, lineId, [leg], each), addLine(to.plan, line))
  const joints = new Set([
    ...(start.kind === 'wire' ? [from.station] : []),
    ...(end.kind === 'wire' ? [to.station] : []),
  ])
  return equipLine(drawn, lineId, equipment, joints)
}
