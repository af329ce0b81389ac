import { legGeometry } from '../geo/leg-length'
import { recordsOf } from '../plan/field-records'
import type { LineId, StationId } from '../plan/id'
import type { Place } from '../plan/place'
import { type Plan, vertexOf } from '../plan/plan'
import { splitLine } from '../plan/split-line'
import { addStation } from '../plan/station-edits'
import { freeStationName } from '../plan/station-name'
import { measureLine } from './measure-line'
import { wireMOnLeg } from './place-on-line'

/** The ids that a new station takes, and the second half of a line that it comes to stand on. */
export interface NewIds {
  readonly station: StationId
  readonly secondHalf: LineId
}

/** The plan with a station at the place, and which it is; the plan itself where one stands there. */
export function standAt(plan: Plan, place: Place, ids: NewIds): { plan: Plan; station: StationId } {
  if (place.kind === 'station') return { plan, station: place.id }
  const station = { id: ids.station, name: freeStationName(plan), position: place.position }
  return {
    station: ids.station,
    plan:
      place.kind === 'ground'
        ? addStation(plan, station)
        : splitLine(plan, {
            line: place.line,
            leg: place.leg,
            station,
            second: ids.secondHalf,
            ...jointOn(plan, place),
          }),
  }
}

/** Wire up to the place, where something was recorded on its line. */
function jointOn(plan: Plan, { line: id, leg, position }: Extract<Place, { kind: 'wire' }>) {
  const line = plan.lines.get(id)
  if (!line || !recordsOf(plan).some((record) => record.line === id)) return {}
  const measured = measureLine(plan, line)
  const along = legGeometry(vertexOf(plan, line, leg), position).mapM / measured.legs[leg]!.mapM
  return { jointM: wireMOnLeg(measured, leg, Math.min(1, along)) }
}
