import { type GridCrs, isInDegrees, projectionOf } from '../geo/projection'
import { cellOf, type Extent, type GridTransform } from '../terrain/elevation-grid'

/** Columns and rows of a raster, the ends not among them. */
export interface RasterWindow {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** Cells kept in memory for one grid, at most: 40 million, 160 MB as floats. */
export const MOST_CELLS = 40e6

/** Cells beyond the extent that are read as well, so that a bilinear sample at its edge has its neighbours. */
const MARGIN = 2

/** The window of a raster that covers an extent, or null where they do not meet. Without an extent: all of it. */
export function windowOver(
  raster: { crs: GridCrs; transform: GridTransform; columns: number; rows: number },
  extent: Extent | undefined,
): RasterWindow | null {
  const { crs, transform, columns, rows } = raster
  if (!extent) return { left: 0, top: 0, right: columns, bottom: rows }
  const projection = projectionOf(crs)
  // Degrees of a grid may run past 180: try the extent a turn to either side.
  const turns = isInDegrees(crs) || crs.kind === 'web-mercator' ? [0, 360, -360] : [0]
  for (const turnDeg of turns) {
    let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity]
    const EDGE = 16
    for (let i = 0; i <= EDGE; i++) {
      for (let j = 0; j <= EDGE; j++) {
        const lonDeg = extent.westDeg + ((extent.eastDeg - extent.westDeg) * i) / EDGE + turnDeg
        const latDeg = extent.southDeg + ((extent.northDeg - extent.southDeg) * j) / EDGE
        const [column, row] = cellOf(transform, ...projection.forward(lonDeg, latDeg))
        if (!Number.isFinite(column + row)) continue
        left = Math.min(left, column)
        right = Math.max(right, column)
        top = Math.min(top, row)
        bottom = Math.max(bottom, row)
      }
    }
    if (right < -0.5 || bottom < -0.5 || left > columns - 0.5 || top > rows - 0.5) continue
    return {
      left: Math.max(0, Math.floor(left) - MARGIN),
      top: Math.max(0, Math.floor(top) - MARGIN),
      right: Math.min(columns, Math.ceil(right) + MARGIN + 1),
      bottom: Math.min(rows, Math.ceil(bottom) + MARGIN + 1),
    }
  }
  return null
}
