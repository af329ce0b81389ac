import { planeAbout } from '../geo/plane'
import type { Position } from '../geo/position'
import { spanOf } from '../geo/span'
import { hazardShape } from '../hazard/hazard-shape'
import { HAZARDS } from '../hazard/kinds'
import type { Hazard } from '../plan/plan'
import type { GridGround } from '../terrain/ground-from-grids'
import type { CostGrid } from './cost-grid'
import { type CellPoint, fillRings, walkCells } from './raster-walk'
import type { RouteWeights } from './route-weights'

/** The cost grid of a stretch of country, and where it lies. */
export interface RouteGround {
  readonly grid: CostGrid
  /** Position to a point in cells, and back. */
  readonly toCells: (position: Position) => CellPoint
  readonly toDeg: (point: CellPoint) => readonly [lonDeg: number, latDeg: number]
  /** The cell that a point lies in; the nearest one for a point off the grid. */
  readonly cellAt: (point: CellPoint) => number
}

/** Room left around the places, as a part of how far they lie apart, and at least so much, m. */
interface Margin {
  readonly part: number
  readonly leastM: number
}
const MARGIN: Margin = { part: 0.35, leastM: 300 }
/** No cell is finer than this, m: hazards are not drawn finer, and a crew does not lay wire to a metre. */
const FINEST_CELL_M = 5

/** Lays a cost grid over places and the country around them: heights from the ground, hazards by their weights. */
export function routeGround(
  places: readonly Position[],
  hazards: Iterable<Hazard>,
  weights: RouteWeights,
  ground: GridGround | undefined,
  mostCells: number,
  margin = MARGIN,
): RouteGround {
  if (places.length === 0) throw new Error('a route needs places')
  const plane = planeAbout(places)
  const metres = places.map((place) => plane.toPlane(place))
  const [leastEastM, mostEastM] = spanOf(metres.map(([e]) => e))
  const [leastNorthM, mostNorthM] = spanOf(metres.map(([, n]) => n))
  const wideM = mostEastM - leastEastM
  const highM = mostNorthM - leastNorthM
  const marginM = Math.max(margin.leastM, margin.part * Math.hypot(wideM, highM))
  const westM = leastEastM - marginM
  const northM = mostNorthM + marginM
  const cellM = Math.max(
    FINEST_CELL_M,
    Math.sqrt(((wideM + 2 * marginM) * (highM + 2 * marginM)) / mostCells),
  )
  const columns = Math.max(1, Math.floor((wideM + 2 * marginM) / cellM))
  const rows = Math.max(1, Math.floor((highM + 2 * marginM) / cellM))

  const toCells = (position: Position): CellPoint => {
    const [eastM, northOfM] = plane.toPlane(position)
    return [(eastM - westM) / cellM, (northM - northOfM) / cellM]
  }
  const toDeg = ([x, y]: CellPoint) => plane.toPosition([westM + x * cellM, northM - y * cellM])
  const heightsM =
    ground?.heightsOverM({
      columns,
      rows,
      at: (across, down) => toDeg([0.5 + across * (columns - 1), 0.5 + down * (rows - 1)]),
    }) ?? new Float32Array(columns * rows).fill(Number.NaN)

  const grid: CostGrid = {
    columns,
    rows,
    cellM,
    heightsM,
    perM: new Float32Array(columns * rows).fill(1),
    toll: new Float32Array(columns * rows),
    climb: weights.climb,
  }
  layHazards(grid, hazards, weights, toCells)
  const clamp = (value: number, most: number) => Math.min(Math.max(Math.floor(value), 0), most - 1)
  return {
    grid,
    toCells,
    toDeg,
    cellAt: ([x, y]) => clamp(y, rows) * columns + clamp(x, columns),
  }
}

/** Writes hazards into a cost grid: paces first, then tolls, and what is barred last. */
function layHazards(
  grid: CostGrid,
  hazards: Iterable<Hazard>,
  weights: RouteWeights,
  toCells: (position: Position) => CellPoint,
): void {
  const { columns, rows, cellM, perM } = grid
  const stamp = new Int32Array(columns * rows)
  let mark = 0

  /** Calls once with each cell within a distance of a path. */
  const alongPaths = (
    paths: readonly (readonly CellPoint[])[],
    withinM: number,
    each: (cell: number) => void,
  ) => {
    mark++
    const reach = Math.floor(withinM / cellM)
    for (const path of paths) {
      for (let i = 0; i + 1 < path.length; i++) {
        const clipped = clip(path[i]!, path[i + 1]!, columns, rows, reach + 1)
        if (!clipped) continue
        walkCells(clipped[0], clipped[1], (column, row) => {
          for (let r = Math.max(0, row - reach); r <= Math.min(rows - 1, row + reach); r++) {
            for (let c = Math.max(0, column - reach); c <= Math.min(columns - 1, column + reach); c++) {
              const cell = r * columns + c
              if (stamp[cell] === mark) continue
              stamp[cell] = mark
              each(cell)
            }
          }
        })
      }
    }
  }

  const barred: { paths: CellPoint[][]; isArea: boolean }[] = []
  for (const hazard of hazards) {
    const { paths: outline, isArea } = hazardShape(hazard)
    const paths = outline.map((path) => path.map(toCells))
    const { isBarred, near } = HAZARDS[hazard.hazard].route
    if (isBarred) {
      barred.push({ paths, isArea })
      continue
    }
    if (near) {
      const pace = weights.near[hazard.hazard] ?? near.usual
      alongPaths(paths, near.withinM, (cell) => {
        perM[cell] = pace < 1 ? Math.min(perM[cell]!, pace) : perM[cell]! * pace
      })
    }
    const inside = weights.inside[hazard.hazard]
    if (isArea && inside !== undefined) {
      fillRings(paths, columns, rows, (from, to, row) =>
        perM.fill(inside, row * columns + from, row * columns + to + 1),
      )
      continue
    }
    const toll = weights.toll[hazard.hazard] ?? 0
    alongPaths(paths, 0, (cell) => {
      grid.toll[cell]! += toll
    })
  }
  for (const { paths, isArea } of barred) {
    alongPaths(paths, 0, (cell) => (perM[cell] = Infinity))
    if (!isArea) continue
    fillRings(paths, columns, rows, (from, to, row) =>
      perM.fill(Infinity, row * columns + from, row * columns + to + 1),
    )
  }
}

/** The part of a stretch within so many cells of the grid, or null: what is drawn far off is not walked cell by cell. */
function clip(
  a: CellPoint,
  b: CellPoint,
  columns: number,
  rows: number,
  pad: number,
): [CellPoint, CellPoint] | null {
  let [from, to] = [0, 1]
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  for (const [start, delta, low, high] of [
    [a[0], dx, -pad, columns + pad],
    [a[1], dy, -pad, rows + pad],
  ] as const) {
    if (delta === 0) {
      if (start < low || start > high) return null
      continue
    }
    const [p, q] = [(low - start) / delta, (high - start) / delta]
    from = Math.max(from, Math.min(p, q))
    to = Math.min(to, Math.max(p, q))
  }
  if (from > to) return null
  return [
    [a[0] + dx * from, a[1] + dy * from],
    [a[0] + dx * to, a[1] + dy * to],
  ]
}
