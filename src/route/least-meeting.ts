import type { Position } from '../geo/position'
import type { Hazard } from '../plan/plan'
import type { GridGround } from '../terrain/ground-from-grids'
import { costsFrom } from './least-cost-path'
import { routeGround } from './route-ground'
import type { RouteWeights } from './route-weights'

interface MeetingRequest {
  readonly hazards: readonly Hazard[]
  readonly weights: RouteWeights
  readonly mostCells: number
}

/**
 * The place from which the cheapest ways to several others cost the least together, over the ground and what lies in the way: the costs
 * from each of them are added, cell by cell. Undefined where none is reached from all.
 */
export function leastMeeting(
  places: readonly Position[],
  { hazards, weights, mostCells }: MeetingRequest,
  ground: GridGround | undefined,
): Position | undefined {
  const { grid, toCells, toDeg, cellAt } = routeGround(places, hazards, weights, ground, mostCells)
  const sums = new Float64Array(grid.perM.length)
  for (const place of places) {
    const tree = costsFrom(grid, cellAt(toCells(place)))!
    for (const [cell, cost] of tree.costs.entries()) sums[cell]! += cost
  }
  let best = -1
  for (const [cell, sum] of sums.entries())
    if (sum < Number.POSITIVE_INFINITY && (best < 0 || sum < sums[best]!)) best = cell
  return best < 0 ? undefined : toDeg([(best % grid.columns) + 0.5, Math.floor(best / grid.columns) + 0.5])
}
