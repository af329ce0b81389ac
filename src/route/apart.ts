import { type CostGrid, stepCost, stepsOn } from './cost-grid'
import type { CellPoint } from './raster-walk'

/** Ways closer than this go together through one breakage: a vehicle, a fallen tree, a fire; common practice, as a person sets it. */
export const APART_M = 50

/** Cells of a grid around which a second way may come as close as it likes: where both end. */
export interface Shared {
  readonly cell: number
  readonly withinM: number
}

/** Marks in `band` the cells within a distance of a path, but for those around places that both ways share. */
export function markBand(
  { columns, rows, cellM }: CostGrid,
  band: Uint8Array,
  path: readonly number[],
  withinM: number,
  shared: readonly Shared[],
): void {
  const reach = Math.ceil(withinM / cellM)
  const most2 = (withinM / cellM) ** 2
  const isShared = (column: number, row: number) =>
    shared.some(({ cell, withinM: m }) => {
      const [dx, dy] = [column - (cell % columns), row - Math.floor(cell / columns)]
      return Math.hypot(dx, dy) * cellM < m
    })
  for (const cell of path) {
    const [column, row] = [cell % columns, Math.floor(cell / columns)]
    for (let r = Math.max(0, row - reach); r <= Math.min(rows - 1, row + reach); r++) {
      for (let c = Math.max(0, column - reach); c <= Math.min(columns - 1, column + reach); c++) {
        if ((c - column) ** 2 + (r - row) ** 2 > most2 || band[r * columns + c]) continue
        if (!isShared(c, r)) band[r * columns + c] = 1
      }
    }
  }
}

/** The same ground, so many times dearer in a band. */
export const dearerIn = (grid: CostGrid, band: Uint8Array, times: number): CostGrid => ({
  ...grid,
  perM: grid.perM.map((pace, cell) => (band[cell] ? pace * times : pace)),
})

/** What a path costs on a grid, m. */
export function costAlong(grid: CostGrid, path: readonly number[]): number {
  const steps = stepsOn(grid)
  return path.reduce((sum, cell, i) => {
    if (i === 0) return 0
    const before = path[i - 1]!
    return sum + stepCost(grid, steps, before, steps.offset.indexOf(cell - before))
  }, 0)
}

/** A stretch of a way, in cells from its start. */
export interface CloseStretch {
  readonly from: number
  readonly to: number
}

/** Between two looks along a way, in cells. */
const LOOK = 0.5

/** The stretches of a way that lie closer to another than so many cells, in order; and how long the way is, in cells. */
export function closeStretches(
  way: readonly CellPoint[],
  other: readonly CellPoint[],
  apart: number,
): { readonly stretches: readonly CloseStretch[]; readonly length: number } {
  const stretches: { from: number; to: number }[] = []
  let along = 0
  let isOpen = false
  const look = (point: CellPoint, at: number) => {
    const isClose = distanceTo(other, point) < apart
    const last = stretches.at(-1)
    if (isClose && isOpen && last) last.to = at
    else if (isClose) stretches.push({ from: at, to: at })
    isOpen = isClose
  }
  for (let i = 0; i + 1 < way.length; i++) {
    const [a, b] = [way[i]!, way[i + 1]!]
    const length = Math.hypot(b[0] - a[0], b[1] - a[1])
    const count = Math.max(1, Math.ceil(length / LOOK))
    for (let k = i === 0 ? 0 : 1; k <= count; k++) {
      const t = k / count
      look([a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t], along + length * t)
    }
    along += length
  }
  return { stretches, length: along }
}

function distanceTo(way: readonly CellPoint[], [x, y]: CellPoint): number {
  let least = Infinity
  for (let i = 0; i + 1 < way.length; i++) {
    const [[ax, ay], [bx, by]] = [way[i]!, way[i + 1]!]
    const [dx, dy] = [bx - ax, by - ay]
    const t = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)))
    least = Math.min(least, Math.hypot(x - ax - t * dx, y - ay - t * dy))
  }
  return least
}
