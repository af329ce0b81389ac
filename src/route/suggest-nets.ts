import { pathM } from '../geo/leg-length'
import type { Position } from '../geo/position'
import type { StationId } from '../plan/id'
import type { Hazard, Lay } from '../plan/plan'
import { bad, ok, type Result } from '../problem'
import type { GridGround } from '../terrain/ground-from-grids'
import { APART_M } from './apart'
import { costsFrom, leastCostPath, type Searching } from './least-cost-path'
import { closedRing, type Link, spanningTree, star } from './net-shapes'
import { keepApart } from './ring-apart'
import { type RouteGround, routeGround } from './route-ground'
import { layCrossings } from './route-lays'
import { DEFAULT_ROUTE_WEIGHTS, type RouteWeights } from './route-weights'
import { smoothRoute } from './smooth-route'

export interface NetRequest {
  readonly stations: readonly { readonly id: StationId; readonly name: string; readonly position: Position }[]
  /** Where the supply stands: the middle of the star. Without one the star is the cheapest of all. */
  readonly hub?: StationId
  readonly hazards: readonly Hazard[]
  readonly weights?: RouteWeights
  readonly mostCells?: number
  /** How far the lines of a ring keep apart, m. */
  readonly apartM?: number
}

export interface NetLink {
  readonly from: StationId
  readonly to: StationId
  readonly bends: readonly Position[]
  /** How each leg is laid: one more than there are bends. */
  readonly lays: readonly Lay[]
  readonly mapM: number
}

/** `tree`: the least wire · `star`: each station a line of its own · `ring`: closed, so that one break cuts nobody off. */
export interface SuggestedNet {
  readonly shape: 'tree' | 'star' | 'ring'
  readonly links: readonly NetLink[]
  readonly mapM: number
  /** By the weights, in metres of easy ground. */
  readonly cost: number
  /** Of a ring: how far its lines keep apart, m, and where two do not, so that one breakage takes both. */
  readonly apart?: { readonly apartM: number; readonly close: readonly CloseStretchOf[] }
}

/** A stretch that two lines share. */
export interface CloseStretchOf {
  readonly lines: readonly [NetLink, NetLink]
  readonly lengthM: number
  readonly at: Position
}

const MOST_CELLS = 250_000
/** Beyond this many stations the search would take minutes. */
const MOST_STATIONS = 60

/** Nets that join a set of stations over the cheapest routes between them; undefined where the search was stopped. */
export function suggestNets(
  request: NetRequest,
  ground?: GridGround,
  searching: Searching = {},
): Result<SuggestedNet[]> | undefined {
  const { stations, hub, hazards, weights = DEFAULT_ROUTE_WEIGHTS, mostCells = MOST_CELLS } = request
  const fault = (code: string, message: string) => bad({ code, at: 'net', message })
  if (stations.length < 2) return fault('too-few-stations', 'A net needs two stations or more.')
  if (stations.length > MOST_STATIONS) {
    return fault(
      'too-many-stations',
      `A net of at most ${MOST_STATIONS} stations can be suggested: pick fewer.`,
    )
  }
  const country = routeGround(
    stations.map(({ position }) => position),
    hazards,
    weights,
    ground,
    mostCells,
  )
  const cells = stations.map(({ position }) => country.cellAt(country.toCells(position)))
  const costs: number[][] = []
  for (const [i, cell] of cells.entries()) {
    const tree = costsFrom(country.grid, cell, {
      ...searching,
      onProgress: (part) => searching.onProgress?.((i + part) / stations.length),
    })
    if (!tree) return undefined
    costs.push(cells.map((other) => tree.costs[other]!))
  }
  // Summed in another order, the way back differs in its last digit.
  for (let i = 0; i < costs.length; i++) for (let j = 0; j < i; j++) costs[i]![j] = costs[j]![i]!

  const cutOff = stations.find((_, i) => costs[i]!.every((cost, j) => i === j || cost === Infinity))
  if (cutOff) {
    return fault('no-route', `No route leads to ${cutOff.name || cutOff.id}: keep-out areas close it off.`)
  }
  const sum = (links: readonly Link[]) => links.reduce((total, [a, b]) => total + costs[a]![b]!, 0)
  const hubs = hub === undefined ? stations.map((_, i) => i) : [stations.findIndex(({ id }) => id === hub)]
  const stars = hubs.flatMap((i) => {
    const links = i < 0 ? undefined : star(costs, i)
    return links ? [links] : []
  })
  const shapes: [SuggestedNet['shape'], Link[] | undefined][] = [
    ['tree', spanningTree(costs)],
    ['star', stars.length > 0 ? stars.reduce((a, b) => (sum(b) < sum(a) ? b : a)) : undefined],
    ['ring', closedRing(costs)],
  ]
  const routes = new Map<string, NetLink>()
  const linkOf = ([a, b]: Link): NetLink => {
    const key = `${Math.min(a, b)} ${Math.max(a, b)}`
    const known = routes.get(key) ?? routeBetween(country, hazards, stations[a]!, stations[b]!)
    routes.set(key, known)
    return known
  }
  return ok(
    shapes.flatMap(([shape, links]) => {
      if (!links) return []
      if (shape === 'ring') return [ringOf(country, request, links)]
      const drawn = links.map(linkOf)
      return [
        { shape, links: drawn, mapM: drawn.reduce((total, link) => total + link.mapM, 0), cost: sum(links) },
      ]
    }),
  )
}

/** A ring that is to outlive a breakage: its lines are led apart. */
function ringOf(
  country: RouteGround,
  { stations, hazards, apartM = APART_M }: NetRequest,
  links: readonly Link[],
): SuggestedNet {
  const { grid, toCells, toDeg, cellAt } = country
  const points = stations.map(({ position }) => toCells(position))
  const { ways, cost, close } = keepApart({
    ...{ grid, links, apartM },
    places: points.map(cellAt),
    smooth: (sought, cells, [a, b]) => smoothRoute(sought, cells, points[a]!, points[b]!),
  })
  const drawn = ways.map((way, i) => {
    const [a, b] = links[i]!
    return linkAlong(hazards, stations[a]!, stations[b]!, way.slice(1, -1).map(toDeg))
  })
  return {
    shape: 'ring',
    links: drawn,
    mapM: drawn.reduce((total, link) => total + link.mapM, 0),
    cost,
    apart: {
      apartM,
      close: close.map((each) => ({
        lines: [drawn[each.links[0]]!, drawn[each.links[1]]!],
        lengthM: each.length * grid.cellM,
        at: toDeg(each.at),
      })),
    },
  }
}

type Stood = NetRequest['stations'][number]

function routeBetween(
  { grid, toCells, toDeg, cellAt }: RouteGround,
  hazards: readonly Hazard[],
  a: Stood,
  b: Stood,
): NetLink {
  const [first, last] = [toCells(a.position), toCells(b.position)]
  const path = leastCostPath(grid, cellAt(first), cellAt(last))
  return linkAlong(
    hazards,
    a,
    b,
    path ? smoothRoute(grid, path.cells, first, last).slice(1, -1).map(toDeg) : [],
  )
}

function linkAlong(hazards: readonly Hazard[], a: Stood, b: Stood, bends: readonly Position[]): NetLink {
  const points = [a.position, ...bends, b.position]
  const mapM = pathM(points)
  return { from: a.id, to: b.id, ...layCrossings(hazards, points), mapM }
}
