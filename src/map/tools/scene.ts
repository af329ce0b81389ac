import type { Position } from '../../geo/position'
import type { Hazard, Plan } from '../../plan/plan'
import type { Bench } from '../bench'
import { hasRoomForBends, pathOfLine } from '../view/line-path'
import type { Scene } from './whats-here'

/** A hazard's outline; a polygon's ring is closed, its last corner being its first. Holes are drawn and not taken hold of. */
export const outlineOf = ({ geometry }: Hazard): readonly Position[] =>
  geometry.type === 'Polygon' ? (geometry.coordinates[0] ?? []) : geometry.coordinates

/** The plan as it lies on the screen now. */
export const sceneOf = (plan: Plan, { view, store }: Bench): Scene => ({
  stations: [...plan.stations.values()].map(({ id, position }) => ({ id, at: view.pointOf(position) })),
  lines: [...plan.lines.values()].map((line) => {
    const path = pathOfLine(view, plan, line)
    return { id: line.id, path, isCrowded: line.id !== store.selection.peek()?.id && !hasRoomForBends(path) }
  }),
  hazards: [...plan.hazards.values()].map((hazard) => ({
    id: hazard.id,
    path: view.pathOf(outlineOf(hazard)),
  })),
})
