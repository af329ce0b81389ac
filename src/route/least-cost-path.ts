import { type CostGrid, type Steps, stepCost, stepsOn } from './cost-grid'

/** How a long search reports on itself, and how it is stopped. */
export interface Searching {
  /** Part of the cells looked at, 0…1: a search often ends long before all of them. */
  readonly onProgress?: (part: number) => void
  readonly shouldStop?: () => boolean
}

export interface LeastCostPath {
  /** Cells from start to goal, both among them. */
  readonly cells: readonly number[]
  readonly cost: number
}

/** Cells between two reports of progress. */
const REPORT_EVERY = 1 << 15

/**
 * The cheapest path between two cells, by A*; undefined where there is none, or where it is stopped.
 *
 * Straight distance at the cheapest pace, and the climb between the two heights, are never more than what is left to pay.
 * Source: P. E. Hart, N. J. Nilsson, B. Raphael, IEEE Trans. SSC 4 (1968), p. 100.
 */
export function leastCostPath(
  grid: CostGrid,
  start: number,
  goal: number,
  searching?: Searching,
): LeastCostPath | undefined {
  const tree = spread(grid, start, goal, searching)
  if (!tree || tree.costs[goal] === Infinity) return undefined
  return { cells: pathTo(tree, goal), cost: tree.costs[goal]! }
}

/** Costs from one cell to every other, m, and the step that leads to each. */
export interface CostTree {
  readonly start: number
  readonly costs: Float64Array
  readonly moves: Int8Array
  readonly steps: Steps
}

/** Cheapest costs from a cell to all others, by Dijkstra; undefined where it is stopped. */
export const costsFrom = (grid: CostGrid, start: number, searching?: Searching): CostTree | undefined =>
  spread(grid, start, undefined, searching)

/** The cells of the cheapest path that a tree knows to a cell; none where the cell was not reached. */
export function pathTo({ start, costs, moves, steps }: CostTree, goal: number): number[] {
  if (costs[goal] === Infinity) return []
  const cells = [goal]
  for (let cell = goal; cell !== start; ) {
    cell -= steps.offset[moves[cell]!]!
    cells.push(cell)
  }
  return cells.reverse()
}

function spread(
  grid: CostGrid,
  start: number,
  goal: number | undefined,
  { onProgress, shouldStop }: Searching = {},
): CostTree | undefined {
  const { columns, rows } = grid
  const size = columns * rows
  const steps = stepsOn(grid)
  const costs = new Float64Array(size).fill(Infinity)
  const moves = new Int8Array(size).fill(-1)
  const closed = new Uint8Array(size)
  const queue = new CellQueue(size)
  const pace = leastPace(grid)
  const remaining = goal === undefined ? undefined : remainingCost(grid, goal, pace)
  const leastStep = steps.runM.map((runM) => runM * pace)
  costs[start] = 0
  if (grid.perM[start]! < Infinity) queue.put(start, 0)

  for (let looked = 0; queue.length > 0; looked++) {
    if (looked % REPORT_EVERY === 0) {
      if (shouldStop?.()) return undefined
      onProgress?.(looked / size)
    }
    const cell = queue.take()
    if (cell === goal) break
    closed[cell] = 1
    const soFar = costs[cell]!
    const column = cell % columns
    const row = (cell - column) / columns
    const inner = column >= 2 && row >= 2 && column < columns - 2 && row < rows - 2
    for (let m = 0; m < steps.count; m++) {
      if (!inner && !isOn(column + steps.dx[m]!, row + steps.dy[m]!, columns, rows)) continue
      const next = cell + steps.offset[m]!
      // Most neighbours are reached already, and cheaper than this step could be at its best.
      if (closed[next] || soFar + leastStep[m]! >= costs[next]!) continue
      const cost = soFar + stepCost(grid, steps, cell, m)
      if (cost < costs[next]!) {
        costs[next] = cost
        moves[next] = m
        queue.put(next, remaining ? cost + remaining(next) : cost)
      }
    }
  }
  onProgress?.(1)
  return { start, costs, moves, steps }
}

const isOn = (column: number, row: number, columns: number, rows: number) =>
  column >= 0 && row >= 0 && column < columns && row < rows

function leastPace({ perM }: CostGrid): number {
  let pace = Infinity
  for (const each of perM) if (each < pace) pace = each
  return pace
}

/** The least that can be left to pay from a cell to the goal. */
function remainingCost(grid: CostGrid, goal: number, pace: number): (cell: number) => number {
  const { columns, cellM, heightsM, climb } = grid
  const goalColumn = goal % columns
  const goalRow = Math.floor(goal / columns)
  // With unknown heights between, the climb in sight need not be climbed.
  const wholly = !heightsM.some(Number.isNaN)
  const goalM = heightsM[goal]!
  return (cell) => {
    const column = cell % columns
    const dx = column - goalColumn
    const dy = (cell - column) / columns - goalRow
    const flat = Math.sqrt(dx * dx + dy * dy) * cellM * pace
    return wholly ? flat + Math.abs(heightsM[cell]! - goalM) * climb : flat
  }
}

/** Cells in the order of their keys: a heap of four children a node, each cell in it once. Keys lie by place, next to each other. */
class CellQueue {
  private readonly heap: Int32Array
  private readonly keys: Float64Array
  private readonly places: Int32Array
  length = 0

  constructor(size: number) {
    this.heap = new Int32Array(size)
    this.keys = new Float64Array(size)
    this.places = new Int32Array(size).fill(-1)
  }

  /** Puts a cell in, or moves it forward to a lower key. */
  put(cell: number, key: number): void {
    const { heap, keys, places } = this
    let place = places[cell]!
    if (place < 0) place = this.length++
    while (place > 0) {
      const parent = (place - 1) >> 2
      if (keys[parent]! <= key) break
      heap[place] = heap[parent]!
      keys[place] = keys[parent]!
      places[heap[place]!] = place
      place = parent
    }
    heap[place] = cell
    keys[place] = key
    places[cell] = place
  }

  /** Takes out the cell of the lowest key. */
  take(): number {
    const { heap, keys, places } = this
    const first = heap[0]!
    places[first] = -1
    const end = --this.length
    if (end === 0) return first
    const last = heap[end]!
    const key = keys[end]!
    let place = 0
    for (;;) {
      let child = place * 4 + 1
      if (child >= end) break
      const beyond = Math.min(child + 4, end)
      let low = keys[child]!
      for (let other = child + 1; other < beyond; other++) {
        if (keys[other]! < low) {
          child = other
          low = keys[other]!
        }
      }
      if (low >= key) break
      heap[place] = heap[child]!
      keys[place] = low
      places[heap[place]!] = place
      place = child
    }
    heap[place] = last
    keys[place] = key
    places[last] = place
    return first
  }
}
