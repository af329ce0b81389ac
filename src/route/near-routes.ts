import { pathM } from '../geo/leg-length'
import { bad, ok, type Result } from '../problem'
import type { GridGround } from '../terrain/ground-from-grids'
import { type Area, ringsWithin } from '../terrain/rings-within'
import { APART_M, closeStretches, costAlong, dearerIn, markBand } from './apart'
import type { CostGrid } from './cost-grid'
import { type CostTree, costsFrom, leastCostPath, pathTo, type Searching } from './least-cost-path'
import type { CellPoint } from './raster-walk'
import { type RouteGround, routeGround } from './route-ground'
import { layCrossings } from './route-lays'
import { DEFAULT_ROUTE_WEIGHTS } from './route-weights'
import { smoothRoute } from './smooth-route'
import { barredEnds, NO_ROUTE, type RouteRequest, type SuggestedRoute } from './suggest-route'

export interface NearRequest extends RouteRequest {
  /** How much dearer than the best a way may be, %. */
  readonly sharePct: number
  /** How far ways must lie apart to count as another, m; absent: a part of how far it is. */
  readonly apartM?: number
}

export interface NearRoute extends SuggestedRoute {
  /** Part of its length that lies as far as asked from any of the others, 0…1; 1 for the best. */
  readonly apart: number
}

export interface NearRoutes {
  /** All places through which some way within the share leads. */
  readonly corridor: Area
  /** The best, and others that truly differ from it and from each other, the cheapest first. */
  readonly routes: readonly NearRoute[]
  readonly apartM: number
}

const MOST_CELLS = 250_000
/** Ways count as others from so far apart on, as a part of the straight line, and never from less than a break is wide. */
const APART_PART = 0.08
/** Ways offered besides the best. */
const OTHERS = 3
/** A way is another where at least so much of it lies apart from each before it. */
const LEAST_APART = 0.5
/** How much dearer the ground beside earlier ways is made, one after the other, until a way is another. */
const DEARER = [1.5, 3, 10] as const
/** Around both ends ways may run together, in distances that they else keep. */
const ENDS = 3

/**
 * Where else a line could go: the corridor of all ways within a share of the best, and a few of them that truly differ.
 *
 * A place is in the corridor where the cheapest way through it, which is what it costs from either end added, is within the share. Others are the
 * cheapest ways once the ground beside those before is made dearer. Source: R. Abraham, D. Delling, A. Goldberg, R. Werneck, Alternative
 * routes in road networks, J. Exp. Algorithmics 18 (2013), 1.3, for what makes ways differ (from memory).
 */
export function nearRoutes(
  request: NearRequest,
  ground?: GridGround,
  searching: Searching = {},
): Result<NearRoutes> | undefined {
  const { from, to, hazards, weights = DEFAULT_ROUTE_WEIGHTS, mostCells = MOST_CELLS } = request
  const country = routeGround([from, to], hazards, weights, ground, mostCells)
  const { grid, toCells, cellAt } = country
  const [start, goal] = [cellAt(toCells(from)), cellAt(toCells(to))]
  const barred = barredEnds(grid, start, goal)
  if (barred) return barred
  const part = (share: number) => (done: number) => searching.onProgress?.(share / 4 + done / 4)
  const there = costsFrom(grid, start, { ...searching, onProgress: part(0) })
  const back = there && costsFrom(grid, goal, { ...searching, onProgress: part(1) })
  if (!there || !back) return undefined
  const best = there.costs[goal]!
  if (best === Infinity) return bad(NO_ROUTE)
  const most = best * (1 + request.sharePct / 100)
  const through = Float32Array.from(there.costs, (cost, cell) => cost + back.costs[cell]!)
  // What is added in another order differs in its last digit: the best way itself must be within.
  const corridor = ringsWithin(through, { ...grid, toDeg: country.toDeg }, most * (1 + 1e-6))
  const straightM = Math.hypot(...cellsApart(grid, start, goal)) * grid.cellM
  const { apartM = Math.max(APART_M, APART_PART * straightM) } = request
  const routes = waysWithin(country, { ...request, apartM }, there, { start, goal, most, searching })
  if (!routes) return undefined
  return ok({ corridor, routes, apartM })
}

interface Wanted {
  readonly start: number
  readonly goal: number
  readonly most: number
  readonly searching: Searching
}

function waysWithin(
  country: RouteGround,
  { from, to, hazards, apartM }: NearRequest & { readonly apartM: number },
  there: CostTree,
  { start, goal, most, searching }: Wanted,
): NearRoute[] | undefined {
  const { grid, toCells, toDeg } = country
  const ends = [toCells(from), toCells(to)] as const
  const free = [start, goal].map((cell) => ({ cell, withinM: ENDS * apartM }))
  const band = new Uint8Array(grid.perM.length)
  const ways: CellPoint[][] = []
  const found: NearRoute[] = []
  const take = (cells: readonly number[], way: CellPoint[], apart: number) => {
    ways.push(way)
    markBand(grid, band, cells, apartM, free)
    const points = [from, ...way.slice(1, -1).map(toDeg), to]
    const laid = layCrossings(hazards, points)
    const cost = costAlong(grid, cells)
    found.push({ ...laid, mapM: pathM(points), cost, cellM: grid.cellM, apart })
  }
  const first = pathTo(there, goal)
  take(first, smoothRoute(grid, first, ...ends), 1)
  for (let other = 0; other < OTHERS; other++) {
    let isTaken = false
    for (const times of DEARER) {
      if (searching.shouldStop?.()) return undefined
      const beside = dearerIn(grid, band, times)
      const path = leastCostPath(beside, start, goal)
      if (!path || costAlong(grid, path.cells) > most) break
      const way = smoothRoute(beside, path.cells, ...ends)
      const apart = Math.min(...ways.map((each) => partApart(way, each, apartM / grid.cellM)))
      if (apart < LEAST_APART) continue
      take(path.cells, way, apart)
      isTaken = true
      break
    }
    if (!isTaken) break
    searching.onProgress?.(0.5 + (other + 1) / (2 * OTHERS))
  }
  return found
    .map((route, i) => (i === 0 ? route : { ...route, apart: apartFrom(ways, i, apartM / grid.cellM) }))
    .sort((a, b) => a.cost - b.cost)
}

const cellsApart = ({ columns }: CostGrid, a: number, b: number) =>
  [(a % columns) - (b % columns), Math.floor(a / columns) - Math.floor(b / columns)] as const

/** The least part of a way that lies apart from any other. */
const apartFrom = (ways: readonly (readonly CellPoint[])[], own: number, apart: number): number =>
  Math.min(...ways.flatMap((other, j) => (j === own ? [] : [partApart(ways[own]!, other, apart)])))

function partApart(way: readonly CellPoint[], other: readonly CellPoint[], apart: number): number {
  const { stretches, length } = closeStretches(way, other, apart)
  const close = stretches.reduce((sum, { from, to }) => sum + to - from, 0)
  return length > 0 ? 1 - close / length : 0
}
