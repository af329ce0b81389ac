import Graph from 'graphology'
import { dijkstra } from 'graphology-shortest-path'
import createGraph from 'ngraph.graph'
import ngraphPath from 'ngraph.path'
import proj4 from 'proj4'
import { legGeometry } from '../../src/geo/leg-length'
import { type CostGrid, stepCost, stepsOn } from '../../src/route/cost-grid'
import { leastCostPath } from '../../src/route/least-cost-path'
import { bilinearM, cellOf, type ElevationGrid } from '../../src/terrain/elevation-grid'
import { groundFromGrids } from '../../src/terrain/ground-from-grids'
import { type BenchRow, medianMs } from './timing'

const PATH_GOAL_MS = 1000
const PROFILE_GOAL_MS = 20
/** A side that general-purpose graphs, with an object for every step, still hold in memory. */
const SMALL_SIDE = 200

/** Hills, a bog, a keep-out block and a road to pay for, on a square of cells. */
function country(side: number): CostGrid {
  const size = side * side
  const grid: CostGrid = {
    columns: side,
    rows: side,
    cellM: 10,
    heightsM: new Float32Array(size),
    perM: new Float32Array(size).fill(1),
    toll: new Float32Array(size),
    climb: 4,
  }
  for (let cell = 0; cell < size; cell++) {
    const x = (cell % side) / side
    const y = Math.floor(cell / side) / side
    grid.heightsM[cell] = 300 + 80 * Math.sin(25 * x) * Math.cos(18 * y) + 20 * Math.sin(140 * x + 110 * y)
    if (Math.sin(16 * x) + Math.cos(14 * y) > 1.2) grid.perM[cell] = 3
    if (Math.abs(y - 0.5) < 1 / side) grid.toll[cell] = 300
    if (x > 0.4 && x < 0.6 && y > 0.3 && y < 0.7) grid.perM[cell] = Infinity
  }
  return grid
}

const corners = (side: number) =>
  [Math.floor(side * 0.02) * (side + 1), Math.floor(side * 0.98) * (side + 1)] as const

/** Every step of a grid that is not barred, with its cost. */
function forEachStep(grid: CostGrid, each: (from: number, to: number, cost: number) => void): void {
  const { columns, rows } = grid
  const steps = stepsOn(grid)
  for (let cell = 0; cell < columns * rows; cell++) {
    for (let m = 0; m < steps.count; m++) {
      const column = (cell % columns) + steps.dx[m]!
      const row = Math.floor(cell / columns) + steps.dy[m]!
      if (column < 0 || row < 0 || column >= columns || row >= rows) continue
      const cost = stepCost(grid, steps, cell, m)
      if (cost < Infinity) each(cell, row * columns + column, cost)
    }
  }
}

/** A route over a million cells. */
export async function routeOverMillion(): Promise<BenchRow> {
  const grid = country(1000)
  const [start, goal] = corners(1000)
  const ms = await medianMs(() => leastCostPath(grid, start, goal))
  return {
    what: 'Cheapest route over 1,000 × 1,000 cells, corner to corner',
    ms,
    goals: [{ kind: 'time', text: 'under 1 s', met: ms < PATH_GOAL_MS }],
  }
}

/** The same over fewer cells, beside two general-purpose graph libraries; their graphs are built before the clock starts. */
export async function routeBesideOthers(): Promise<BenchRow> {
  const grid = country(SMALL_SIDE)
  const [start, goal] = corners(SMALL_SIDE)
  const { cost } = leastCostPath(grid, start, goal)!
  const agree = (by: string, theirs: number) => {
    if (Math.abs(theirs / cost - 1) > 1e-9) throw new Error(`${by} finds ${theirs}, not ${cost}`)
  }
  const ms = await medianMs(() => leastCostPath(grid, start, goal))

  const graphology = new Graph({ type: 'directed' })
  for (let cell = 0; cell < SMALL_SIDE ** 2; cell++) graphology.addNode(cell)
  forEachStep(grid, (from, to, weight) => graphology.addDirectedEdge(from, to, { weight }))
  const search = (): string[] => dijkstra.bidirectional(graphology, String(start), String(goal), 'weight')
  agree(
    'graphology',
    search().reduce((sum, node, i, all) => {
      return i === 0 ? 0 : sum + (graphology.getEdgeAttribute(all[i - 1], node, 'weight') as number)
    }, 0),
  )
  const graphologyMs = await medianMs(search)

  const ngraph = createGraph<undefined, number>()
  forEachStep(grid, (from, to, weight) => ngraph.addLink(from, to, weight))
  const straightM = (a: number, b: number) =>
    10 *
    Math.hypot((a % SMALL_SIDE) - (b % SMALL_SIDE), Math.floor(a / SMALL_SIDE) - Math.floor(b / SMALL_SIDE))
  const finder = ngraphPath.aStar(ngraph, {
    oriented: true,
    distance: (_from, _to, link) => link.data,
    heuristic: (from, to) => straightM(Number(from.id), Number(to.id)),
  })
  const found = finder.find(start, goal)
  agree(
    'ngraph.path',
    found.reduce((sum, node, i) => (i === 0 ? 0 : sum + ngraph.getLink(node.id, found[i - 1]!.id)!.data), 0),
  )
  const ngraphMs = await medianMs(() => finder.find(start, goal))

  return {
    what: `Cheapest route over ${SMALL_SIDE} × ${SMALL_SIDE} cells (the others’ graphs ready built)`,
    ms,
    against: [
      { by: 'Dijkstra from both ends (graphology)', ms: graphologyMs },
      { by: 'A* (ngraph.path)', ms: ngraphMs },
    ],
    goals: [{ kind: 'ratio', text: 'faster than either', met: ms < Math.min(graphologyMs, ngraphMs) }],
  }
}

/** Ground lengths of 100 km of legs on a 10 m grid in UTM: what opening a plan asks of the ground. */
export async function groundOfLongNet(): Promise<BenchRow> {
  const side = 1200
  const heights = Float32Array.from({ length: side * side }, (_, i) => {
    return 300 + 60 * Math.sin((i % side) / 40) * Math.cos(Math.floor(i / side) / 55)
  })
  const grid: ElevationGrid = {
    name: 'made',
    crs: { kind: 'utm', zone: 33, south: false },
    columns: side,
    rows: side,
    transform: { x0: 494_000, xPerColumn: 10, xPerRow: 0, y0: 5_156_000, yPerColumn: 0, yPerRow: -10 },
    heights,
  }
  const legs = Array.from({ length: 125 }, (_, i) => {
    const lonDeg = 14.95 + ((i * 37) % 100) / 1000
    const latDeg = 46.47 + ((i * 53) % 70) / 1000
    const turn = i * 2.4
    return {
      from: [lonDeg, latDeg] as const,
      to: [lonDeg + 0.01 * Math.cos(turn), latDeg + 0.0072 * Math.sin(turn)] as const,
    }
  }).map((leg) => ({ ...leg, mapM: legGeometry(leg.from, leg.to).mapM }))
  const ground = groundFromGrids([grid])
  const ours = () => legs.reduce((sum, { from, to, mapM }) => sum + (ground.groundM(from, to, mapM) ?? 0), 0)

  const utm = proj4('+proj=utm +zone=33 +datum=WGS84 +units=m')
  const pointByPoint = () =>
    legs.reduce((sum, { from, to, mapM }) => {
      const count = Math.ceil(mapM / 5)
      let lengthM = 0
      let beforeM = Number.NaN
      for (let i = 0; i <= count; i++) {
        const t = i / count
        const [x, y] = utm.forward([from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t])
        const heightM = bilinearM(grid, ...cellOf(grid.transform, x!, y!))
        if (i > 0) lengthM += Math.hypot(mapM / count, heightM - beforeM)
        beforeM = heightM
      }
      return sum + lengthM
    }, 0)
  if (Math.abs(pointByPoint() / ours() - 1) > 1e-6) throw new Error('the two profiles differ')
  const ms = await medianMs(ours)
  const km = legs.reduce((sum, { mapM }) => sum + mapM, 0) / 1000
  return {
    what: `Ground length of ${km.toFixed(0)} km of legs on a 10 m grid in UTM`,
    ms,
    against: [{ by: 'proj4 at every sample', ms: await medianMs(pointByPoint) }],
    goals: [{ kind: 'time', text: `under ${PROFILE_GOAL_MS} ms`, met: ms < PROFILE_GOAL_MS }],
  }
}
