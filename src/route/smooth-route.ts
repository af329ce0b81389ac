import { type CostGrid, stepCost, stepsOn } from './cost-grid'
import { type CellPoint, walkCells } from './raster-walk'

/** What a stretch costs, m: all of it, and the tolls in it. */
interface Price {
  readonly cost: number
  readonly tolls: number
}

/** How much dearer a straight stretch may be than the winding one that it replaces. */
const TOLERANCE = 0.04

/** What a straight stretch over the grid costs; Infinity where it touches a barred cell. */
export function straightPrice(grid: CostGrid, a: CellPoint, b: CellPoint): Price {
  const { columns, rows, cellM, perM, toll, climb, heightsM } = grid
  const lengthM = Math.hypot(b[0] - a[0], b[1] - a[1]) * cellM
  let cost = 0
  let tolls = 0
  let before: number | undefined
  walkCells(a, b, (column, row, part) => {
    if (column < 0 || row < 0 || column >= columns || row >= rows) {
      cost = Infinity
      return
    }
    const cell = row * columns + column
    cost += part * lengthM * perM[cell]!
    if (perM[cell] === Infinity) cost = Infinity
    if (before !== undefined) tolls += Math.abs(toll[cell]! - toll[before]!) / 2
    before = cell
  })
  const steps = Math.max(1, Math.round(lengthM / cellM))
  const heightAt = (t: number) => {
    const column = Math.min(columns - 1, Math.max(0, Math.floor(a[0] + (b[0] - a[0]) * t)))
    const row = Math.min(rows - 1, Math.max(0, Math.floor(a[1] + (b[1] - a[1]) * t)))
    return heightsM[row * columns + column]!
  }
  let heightM = heightAt(0)
  for (let i = 1; i <= steps; i++) {
    const nextM = heightAt(i / steps)
    if (!Number.isNaN(nextM - heightM)) cost += Math.abs(nextM - heightM) * climb
    heightM = nextM
  }
  return { cost: cost + tolls, tolls }
}

/**
 * The few bends that stand in for a path of many cells: each stretch between them costs hardly more than the path did, pays no
 * more tolls, and touches nothing barred. Gives the points from the first to the last, both kept.
 */
export function smoothRoute(
  grid: CostGrid,
  cells: readonly number[],
  first: CellPoint,
  last: CellPoint,
): CellPoint[] {
  const { columns, toll } = grid
  const points = cells.map((cell): CellPoint => [(cell % columns) + 0.5, Math.floor(cell / columns) + 0.5])
  if (points.length < 2) return [first, last]
  points[0] = first
  points[points.length - 1] = last

  const steps = stepsOn(grid)
  const costs = [0]
  const tolls = [0]
  for (let i = 1; i < cells.length; i++) {
    const offset = cells[i]! - cells[i - 1]!
    const m = steps.offset.indexOf(offset)
    costs.push(costs[i - 1]! + stepCost(grid, steps, cells[i - 1]!, m))
    tolls.push(tolls[i - 1]! + tollsOf(toll, steps, cells[i - 1]!, cells[i]!, m))
  }
  const priceOf = (from: number, to: number): Price => ({
    cost: costs[to]! - costs[from]!,
    tolls: tolls[to]! - tolls[from]!,
  })
  const mayReplace = (from: number, to: number, winding: Price) => {
    const straight = straightPrice(grid, points[from]!, points[to]!)
    return (
      straight.tolls <= winding.tolls + 1e-3 && straight.cost <= winding.cost * (1 + TOLERANCE) + grid.cellM
    )
  }

  const kept = [0]
  const split = (from: number, to: number): void => {
    if (to - from < 2 || mayReplace(from, to, priceOf(from, to))) {
      kept.push(to)
      return
    }
    const middle = farthest(points, from, to)
    split(from, middle)
    split(middle, to)
  }
  split(0, points.length - 1)

  for (let changed = true; changed; ) {
    changed = false
    for (let i = 1; i + 1 < kept.length; i++) {
      if (!mayReplace(kept[i - 1]!, kept[i + 1]!, priceOf(kept[i - 1]!, kept[i + 1]!))) continue
      kept.splice(i, 1)
      changed = true
    }
  }
  return kept.map((i) => points[i]!)
}

function tollsOf(
  toll: Float32Array,
  steps: ReturnType<typeof stepsOn>,
  from: number,
  to: number,
  m: number,
): number {
  if (m < steps.firstKnight) return Math.abs(toll[to]! - toll[from]!) / 2
  const between = Math.max(toll[from + steps.nearOffset[m]!]!, toll[from + steps.farOffset[m]!]!)
  return (Math.abs(between - toll[from]!) + Math.abs(toll[to]! - between)) / 2
}

/** The point that lies farthest off the straight line between two others. */
function farthest(points: readonly CellPoint[], from: number, to: number): number {
  const [ax, ay] = points[from]!
  const [bx, by] = points[to]!
  let best = from + 1
  let bestOff = -1
  for (let i = from + 1; i < to; i++) {
    const [x, y] = points[i]!
    const off = Math.abs((bx - ax) * (y - ay) - (by - ay) * (x - ax))
    if (off > bestOff) [best, bestOff] = [i, off]
  }
  return best
}
