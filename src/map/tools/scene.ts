import type { Position } from '../../geo/position'
import { type Hazard, type Plan, verticesOf } from '../../plan/plan'
import type { MapView } from '../view/map-view'
import type { Scene } from './whats-here'

/** A hazard's outline; a polygon's ring is closed, its last corner being its first. Holes are drawn and not taken hold of. */
export const outlineOf = ({ geometry }: Hazard): readonly Position[] =>
  geometry.type === 'Polygon' ? (geometry.coordinates[0] ?? []) : geometry.coordinates

/** The plan as it lies on the screen now. */
export const sceneOf = (plan: Plan, view: MapView): Scene => ({
  stations: [...plan.stations.values()].map(({ id, position }) => ({ id, at: view.pointOf(position) })),
  lines: [...plan.lines.values()].map((line) => ({ id: line.id, path: view.pathOf(verticesOf(plan, line)) })),
  hazards: [...plan.hazards.values()].map((hazard) => ({
    id: hazard.id,
    path: view.pathOf(outlineOf(hazard)),
  })),
})
