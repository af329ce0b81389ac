import type { Position } from '../geo/position'
import { giveFeature, takeFeature } from '../plan/feature-schema'
import { HAZARD } from '../plan/hazard-schema'
import type { StationId } from '../plan/id'
import { LINE } from '../plan/line-schema'
import { type Hazard, type Line, type Plan, type Station, verticesOf } from '../plan/plan'
import { STATION } from '../plan/station-schema'

/** A station of a plan from a feature that its schema let through; and the feature of a station. */
export function toStation(value: unknown): Station {
  const { own, geometry } = takeFeature(STATION, value)
  own.position = geometry.coordinates
  return own as unknown as Station
}

export const stationFeature = (station: Station) =>
  giveFeature(STATION, station, { type: 'Point', coordinates: station.position })

/** A line that its schema let through and that has no `lineFaults`. Its ends are the stations from here on. */
export function toLine(value: unknown, stations: ReadonlyMap<StationId, Station>): Line {
  const { own, geometry } = takeFeature(LINE, value)
  const vertices = geometry.coordinates as readonly Position[]
  const { from, to } = own as unknown as Pick<Line, 'from' | 'to'>
  const endElevationsM = [
    elevationApart(stations.get(from), vertices[0]!),
    elevationApart(stations.get(to), vertices.at(-1)!),
  ]
  own.bends = vertices.slice(1, -1)
  if (endElevationsM.some((each) => each !== null)) own.endElevationsM = endElevationsM
  return own as unknown as Line
}

const elevationApart = (station: Station | undefined, [, , elevationM]: Position): number | null =>
  elevationM === undefined || elevationM === station?.position[2] ? null : elevationM

export function lineFeature(plan: Plan, line: Line) {
  const vertices = [...verticesOf(plan, line)]
  const [atFrom, atTo] = line.endElevationsM ?? []
  vertices[0] = atElevation(vertices[0]!, atFrom)
  vertices[vertices.length - 1] = atElevation(vertices.at(-1)!, atTo)
  return giveFeature(LINE, line, { type: 'LineString', coordinates: vertices })
}

const atElevation = (position: Position, elevationM: number | null | undefined): Position =>
  typeof elevationM === 'number' ? [position[0], position[1], elevationM] : position

/** A hazard of a plan from a feature that its schema let through; and the feature of a hazard. */
export function toHazard(value: unknown): Hazard {
  const { own, geometry } = takeFeature(HAZARD, value)
  own.geometry = geometry
  return own as unknown as Hazard
}

export const hazardFeature = (hazard: Hazard) => giveFeature(HAZARD, hazard, hazard.geometry)
