import type { Position } from '../geo/position'
import { HAZARD_KINDS } from '../plan/hazard-schema'
import type { Hazard } from '../plan/plan'
import type { GridGround } from '../terrain/ground-from-grids'
import type { CostGrid } from './cost-grid'
import { costsFrom, pathTo } from './least-cost-path'
import { type CellPoint, walkCells } from './raster-walk'
import { type RouteGround, routeGround } from './route-ground'
import { DEFAULT_ROUTE_WEIGHTS, type RoutePrices, type RouteWeights } from './route-weights'

/** How far it is over the ground from one place to every cell around it. */
export interface WireField {
  readonly country: RouteGround
  /** From the place to the middle of each cell, along the ground and round what is barred, m; Infinity where no way leads. */
  readonly groundM: Float32Array
  /** The bends of that way to a cell; none where it is straight, or where no way leads. */
  readonly bendsTo: (cell: number) => Position[]
}

const each = (price: number): RoutePrices => Object.fromEntries(HAZARD_KINDS.map((kind) => [kind, price]))

/** The least wire: what may be crossed is crossed, and only water is gone round, at its usual price, where that is not far. */
const LEAST_WIRE: RouteWeights = {
  climb: 0,
  toll: {},
  near: each(1),
  inside: DEFAULT_ROUTE_WEIGHTS.inside,
}

/**
 * Lengths along the ground from one place to all that lies within `reachM` of it east, west, north and south; undefined where the place
 * itself lies in what is barred.
 *
 * The cheapest way over sixteen directions is up to 3 % long; where the straight line between two cells of it meets nothing, that counts, so
 * that ways bend only where something must be gone round (A. Nash, K. Daniel, S. Koenig, A. Felner, Theta*, AAAI 2007, p. 1177).
 *
 */
export function wireField(
  from: Position,
  reachM: number,
  hazards: readonly Hazard[],
  ground: GridGround | undefined,
  mostCells: number,
): WireField | undefined {
  const country = routeGround([from], hazards, LEAST_WIRE, ground, mostCells, { part: 0, leastM: reachM })
  const { grid, toCells, toDeg, cellAt } = country
  const origin = toCells(from)
  const start = cellAt(origin)
  if (grid.perM[start] === Infinity) return undefined
  const tree = costsFrom(grid, start)!
  const size = grid.columns * grid.rows
  const groundM = new Float32Array(size).fill(Infinity)
  /** The cell at which the last straight stretch to each cell begins. */
  const anchors = new Int32Array(size).fill(-1)
  const straight = straightOver(grid)
  const middle = (cell: number): CellPoint =>
    cell === start ? origin : [(cell % grid.columns) + 0.5, Math.floor(cell / grid.columns) + 0.5]
  groundM[start] = 0
  anchors[start] = start
  for (const cell of nearestFirst(tree.costs)) {
    if (cell === start) continue
    const before = cell - tree.steps.offset[tree.moves[cell]!]!
    const anchor = anchors[before]!
    const aheadM =
      anchor === before ? Infinity : groundM[anchor]! + straight(middle(anchor), middle(cell), true)
    if (aheadM < Infinity) {
      groundM[cell] = aheadM
      anchors[cell] = anchor
    } else {
      groundM[cell] = groundM[before]! + straight(middle(before), middle(cell), false)
      anchors[cell] = before
    }
  }
  const bendsTo = (cell: number): Position[] => {
    const bends: Position[] = []
    if (pathTo(tree, cell).length === 0) return bends
    for (let at = anchors[cell]!; at !== start; at = anchors[at]!) bends.push(toDeg(middle(at)))
    return bends.reverse()
  }
  return { country, groundM, bendsTo }
}

/** The cells that were reached, in the order in which a tree reached them. */
function nearestFirst(costs: Float64Array): Uint32Array {
  const reached = Uint32Array.from({ length: costs.length }, (_, cell) => cell).filter(
    (cell) => costs[cell]! < Infinity,
  )
  return reached.sort((a, b) => costs[a]! - costs[b]!)
}

/**
 * Length of a straight stretch along the ground, m; Infinity where it must be free and touches a cell that is not plain ground.
 * Heights lie at the middles of cells, and are bilinear between them.
 */
function straightOver({ columns, rows, cellM, perM, heightsM }: CostGrid) {
  const isPlain = perM.every((pace) => pace === 1)
  const isFlat = heightsM.every(Number.isNaN)
  const heightAt = (x: number, y: number): number => {
    const c = Math.min(Math.max(x - 0.5, 0), columns - 1.001)
    const r = Math.min(Math.max(y - 0.5, 0), rows - 1.001)
    const [column, row] = [Math.floor(c), Math.floor(r)]
    const at = row * columns + column
    const [east, south] = [c - column, r - row]
    const north = heightsM[at]! * (1 - east) + heightsM[at + 1]! * east
    return (
      north * (1 - south) +
      (heightsM[at + columns]! * (1 - east) + heightsM[at + columns + 1]! * east) * south
    )
  }
  return (a: CellPoint, b: CellPoint, mustBeFree: boolean): number => {
    if (mustBeFree && !isPlain) {
      let isFree = true
      walkCells(a, b, (column, row) => {
        if (perM[row * columns + column] !== 1) isFree = false
      })
      if (!isFree) return Infinity
    }
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
    const mapM = Math.hypot(dx, dy) * cellM
    if (isFlat) return mapM
    const count = Math.max(1, Math.round(mapM / cellM))
    const stepM = mapM / count
    let lengthM = 0
    let beforeM = heightAt(a[0], a[1])
    for (let i = 1; i <= count; i++) {
      const heightM = heightAt(a[0] + (dx * i) / count, a[1] + (dy * i) / count)
      const riseM = heightM - beforeM
      // No height is no slope that anyone knows of.
      lengthM += Number.isNaN(riseM) ? stepM : Math.hypot(stepM, riseM)
      beforeM = heightM
    }
    return lengthM
  }
}
