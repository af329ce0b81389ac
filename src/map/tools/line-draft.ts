import type { Position } from '../../geo/position'
import type { CircuitId, LineId, StationId } from '../../plan/id'
import { setLays } from '../../plan/leg-edits'
import { addLine } from '../../plan/line-edits'
import type { Lay, Plan } from '../../plan/plan'
import { addStation } from '../../plan/station-edits'
import { newCircuitId, newLineId, newStationId } from '../../state/new-id'
import { freeStationName } from './station-tool'

/** A line under way. Its ids are fixed at the start, so that what is shown and what is kept are the same line. */
export interface LineDraft {
  readonly start: StationId
  readonly lineId: LineId
  readonly circuitId: CircuitId
  /** Of the station that stands where the line ends on open ground. */
  readonly endId: StationId
  readonly bends: readonly Position[]
  /** How the leg up to each bend is laid. */
  readonly lays: readonly Lay[]
}

export const beginLine = (plan: Plan, start: StationId): LineDraft => ({
  start,
  lineId: newLineId(plan),
  circuitId: newCircuitId(plan),
  endId: newStationId(plan),
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

/** The plan with the line as it would be if it ended here: at a station, or at a new one on open ground. */
export function drawLine(
  plan: Plan,
  { start, lineId, circuitId, endId, bends, lays }: LineDraft,
  end: StationId | Position,
  { wire, lay }: { wire: string; lay: Lay },
): Plan {
  const toStation = typeof end === 'string'
  const ready = toStation ? plan : addStation(plan, { id: endId, name: freeStationName(plan), position: end })
  const to = toStation ? end : endId
  const line = { id: lineId, newCircuitId: circuitId, from: start, to, bends, wire, lay }
  return lays.reduce((drawn, each, leg) => setLays(drawn, lineId, [leg], each), addLine(ready, line))
}
