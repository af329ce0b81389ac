import { pathM } from '../geo/leg-length'
import type { Position } from '../geo/position'
import type { Hazard, Lay } from '../plan/plan'
import { bad, ok, type Result } from '../problem'
import type { GridGround } from '../terrain/ground-from-grids'
import type { CostGrid } from './cost-grid'
import { leastCostPath, type Searching } from './least-cost-path'
import { routeGround } from './route-ground'
import { layCrossings } from './route-lays'
import { DEFAULT_ROUTE_WEIGHTS, type RouteWeights } from './route-weights'
import { smoothRoute } from './smooth-route'

export interface RouteRequest {
  readonly from: Position
  readonly to: Position
  readonly hazards: readonly Hazard[]
  readonly weights?: RouteWeights
  /** Fewer cells answer sooner and coarser: some 40,000 follow a pointer, a million are for keeps. */
  readonly mostCells?: number
}

export interface SuggestedRoute {
  /** The bends between the two ends, and how each leg is laid: one more than there are bends. */
  readonly bends: readonly Position[]
  readonly lays: readonly Lay[]
  readonly mapM: number
  /** What it costs by the weights, in metres of easy ground. */
  readonly cost: number
  /** Side of the cells that it was sought on, m. */
  readonly cellM: number
}

const MOST_CELLS = 1e6

/** The route that costs least between two places; undefined where the search was stopped. */
export function suggestRoute(
  { from, to, hazards, weights = DEFAULT_ROUTE_WEIGHTS, mostCells = MOST_CELLS }: RouteRequest,
  ground?: GridGround,
  searching: Searching = {},
): Result<SuggestedRoute> | undefined {
  const country = routeGround([from, to], hazards, weights, ground, mostCells)
  const { grid, toCells, toDeg, cellAt } = country
  const [first, last] = [toCells(from), toCells(to)]
  const [start, goal] = [cellAt(first), cellAt(last)]
  const barred = barredEnds(grid, start, goal)
  if (barred) return barred
  let stopped = false
  const path = leastCostPath(grid, start, goal, {
    ...searching,
    shouldStop: () => (stopped = searching.shouldStop?.() ?? false),
  })
  if (stopped) return undefined
  if (!path) return bad(NO_ROUTE)
  const bends = smoothRoute(grid, path.cells, first, last).slice(1, -1).map(toDeg)
  const points = [from, ...bends, to]
  return ok({
    ...layCrossings(hazards, points),
    mapM: pathM(points),
    cost: path.cost,
    cellM: grid.cellM,
  })
}

export const NO_ROUTE = {
  code: 'no-route',
  at: 'route',
  message: 'No route leads there: keep-out areas close it off on every side within reach.',
} as const

/** Why no route can be sought: one of its ends lies where none may go; undefined where neither does. */
export function barredEnds({ perM }: CostGrid, start: number, goal: number): Result<never> | undefined {
  const cell = [start, goal].find((each) => perM[each] === Infinity)
  return cell === undefined
    ? undefined
    : bad({
        code: 'route-barred',
        at: 'route',
        message: `The route ${cell === start ? 'starts' : 'ends'} inside or at the edge of a keep-out area: move the station or the area.`,
      })
}
