import type { GridCrs } from '../geo/projection'

export type Heights =
  | Int8Array
  | Uint8Array
  | Int16Array
  | Uint16Array
  | Int32Array
  | Uint32Array
  | Float32Array
  | Float64Array

/** Centre of the cell in a column and a row: x = x0 + xPerColumn·column + xPerRow·row, and y alike. Degrees, or m. */
export interface GridTransform {
  readonly x0: number
  readonly xPerColumn: number
  readonly xPerRow: number
  readonly y0: number
  readonly yPerColumn: number
  readonly yPerRow: number
}

/** Elevations on an even grid, as a value that can be kept, sent to a worker, and sampled. */
export interface ElevationGrid {
  readonly name: string
  readonly crs: GridCrs
  readonly columns: number
  readonly rows: number
  readonly transform: GridTransform
  /** Heights above the grid's datum, m, row by row. */
  readonly heights: Heights
  /** The height that stands for "not known". NaN always does. */
  readonly noData?: number
}

/** A stretch of the globe. West of the antimeridian to east of it: `eastDeg` above 180. */
export interface Extent {
  readonly westDeg: number
  readonly southDeg: number
  readonly eastDeg: number
  readonly northDeg: number
}

/**
 * Height at a fractional column and row, m, bilinear between the four cells around; NaN in a void and off the grid.
 *
 * The outer half of an edge cell has the height of the edge. Range: −0.5 to columns − 0.5, and rows alike.
 */
export function bilinearM(grid: ElevationGrid, column: number, row: number): number {
  const { columns, rows, heights, noData } = grid
  if (!(column >= -0.5 && row >= -0.5 && column <= columns - 0.5 && row <= rows - 0.5)) return Number.NaN
  const c = Math.min(Math.max(column, 0), columns - 1)
  const r = Math.min(Math.max(row, 0), rows - 1)
  const left = Math.min(Math.floor(c), Math.max(columns - 2, 0))
  const top = Math.min(Math.floor(r), Math.max(rows - 2, 0))
  const east = c - left
  const south = r - top
  const at = top * columns + left
  const right = columns > 1 ? 1 : 0
  const down = rows > 1 ? columns : 0
  // A neighbour of no weight may be void: a profile along the edge of a void is still known.
  let sum = 0
  for (let corner = 0; corner < 4; corner++) {
    const weight = (corner & 1 ? east : 1 - east) * (corner & 2 ? south : 1 - south)
    if (weight === 0) continue
    const height = heights[at + (corner & 1 ? right : 0) + (corner & 2 ? down : 0)]!
    if (height === noData) return Number.NaN
    sum += weight * height
  }
  return sum
}

/** The transform of a window of a grid that starts at a column and a row of it. */
export const windowTransform = (t: GridTransform, column: number, row: number): GridTransform => ({
  ...t,
  x0: t.x0 + t.xPerColumn * column + t.xPerRow * row,
  y0: t.y0 + t.yPerColumn * column + t.yPerRow * row,
})

/** Fractional column and row of a grid's own x and y. */
export function cellOf(t: GridTransform, x: number, y: number): [column: number, row: number] {
  const determinant = t.xPerColumn * t.yPerRow - t.xPerRow * t.yPerColumn
  const dx = x - t.x0
  const dy = y - t.y0
  return [
    (dx * t.yPerRow - dy * t.xPerRow) / determinant,
    (dy * t.xPerColumn - dx * t.yPerColumn) / determinant,
  ]
}
