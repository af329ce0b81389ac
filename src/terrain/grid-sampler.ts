import { shortWayDeg } from '../geo/longitude'
import { type Projection, projectionOf } from '../geo/projection'
import { bilinearM, cellOf, type ElevationGrid } from './elevation-grid'
import { cellSizeM, extentOf } from './grid-extent'

/** A patch of the globe with a lattice on it: where the point at a fraction of its width and of its height lies. */
export interface Patch {
  readonly columns: number
  readonly rows: number
  readonly at: (across: number, down: number) => readonly [lonDeg: number, latDeg: number]
}

export type LonLat = readonly [lonDeg: number, latDeg: number, elevationM?: number]

/** A patch is projected at so many points a side, and bilinear between them: off by under a metre in 20 km. */
const PATCH_NODES = 32

/**
 * Least step between samples where heights are whole metres. Rounding puts a variance of 1/6 m² on each height difference, and
 * so 1/12 s² too much on a length: at 15 m, 0.04 %.
 */
const WHOLE_METRE_STEP_M = 15

/** One grid, asked for heights in degrees. */
export interface Sampler {
  readonly grid: ElevationGrid
  readonly cellM: number
  readonly stepM: number
  heightM(lonDeg: number, latDeg: number): number
  heightsAlongM(from: LonLat, to: LonLat, intervals: number, spans: number): Float64Array
  /** Writes heights where there are none yet, and says whether any are still wanting. */
  fill(heightsM: Float32Array, patch: Patch): boolean
}

const inWholeMetres = ({ heights }: ElevationGrid): boolean => {
  const every = Math.max(1, Math.floor(heights.length / 4096))
  for (let i = 0; i < heights.length; i += every) {
    const height = heights[i]!
    if (Number.isFinite(height) && !Number.isInteger(height)) return false
  }
  return true
}

export function samplerOf(grid: ElevationGrid): Sampler {
  const projection: Projection = projectionOf(grid.crs)
  const extent = extentOf(grid, projection)
  const cellM = cellSizeM(grid, extent)
  const middleDeg = (extent.westDeg + extent.eastDeg) / 2
  const nearDeg = (lonDeg: number) => middleDeg + shortWayDeg(lonDeg - middleDeg)
  // A quick no for what is far off; the edges of a projected grid bulge a little beyond the points they were taken at.
  const padDeg = 0.02 * Math.max(extent.eastDeg - extent.westDeg, extent.northDeg - extent.southDeg)
  const covers = (lonDeg: number, latDeg: number) =>
    lonDeg >= extent.westDeg - padDeg &&
    lonDeg <= extent.eastDeg + padDeg &&
    latDeg >= extent.southDeg - padDeg &&
    latDeg <= extent.northDeg + padDeg

  return {
    grid,
    cellM,
    stepM: Math.max(cellM / 2, inWholeMetres(grid) ? WHOLE_METRE_STEP_M : 0),
    heightM: (lonDeg, latDeg) => {
      const lon = nearDeg(lonDeg)
      if (!covers(lon, latDeg)) return Number.NaN
      return bilinearM(grid, ...cellOf(grid.transform, ...projection.forward(lon, latDeg)))
    },
    heightsAlongM: (from, to, intervals, spans) => {
      const lon0 = nearDeg(from[0])
      const dLon = shortWayDeg(to[0] - from[0])
      const cells = Array.from({ length: spans + 1 }, (_, k) => {
        const t = k / spans
        return cellOf(grid.transform, ...projection.forward(lon0 + dLon * t, from[1] + (to[1] - from[1]) * t))
      })
      const heightsM = new Float64Array(intervals + 1)
      for (let i = 0; i <= intervals; i++) {
        const s = (i / intervals) * spans
        const k = Math.min(Math.floor(s), spans - 1)
        const [column, row] = cells[k]!
        const [nextColumn, nextRow] = cells[k + 1]!
        heightsM[i] = bilinearM(
          grid,
          column + (nextColumn - column) * (s - k),
          row + (nextRow - row) * (s - k),
        )
      }
      return heightsM
    },
    fill: (heightsM, { columns, rows, at }) => {
      const side = PATCH_NODES + 1
      const nodes = Array.from({ length: side * side }, (_, k) => {
        const [lonDeg, latDeg] = at((k % side) / PATCH_NODES, Math.floor(k / side) / PATCH_NODES)
        return cellOf(grid.transform, ...projection.forward(nearDeg(lonDeg), latDeg))
      })
      let wanting = false
      for (let row = 0; row < rows; row++) {
        const v = (row / Math.max(1, rows - 1)) * PATCH_NODES
        const down = Math.min(Math.floor(v), PATCH_NODES - 1)
        for (let column = 0; column < columns; column++) {
          const i = row * columns + column
          if (!Number.isNaN(heightsM[i]!)) continue
          const u = (column / Math.max(1, columns - 1)) * PATCH_NODES
          const across = Math.min(Math.floor(u), PATCH_NODES - 1)
          const k = down * side + across
          const mix = (axis: 0 | 1) => {
            const top = nodes[k]![axis] + (nodes[k + 1]![axis] - nodes[k]![axis]) * (u - across)
            const low =
              nodes[k + side]![axis] + (nodes[k + side + 1]![axis] - nodes[k + side]![axis]) * (u - across)
            return top + (low - top) * (v - down)
          }
          heightsM[i] = bilinearM(grid, mix(0), mix(1))
          wanting ||= Number.isNaN(heightsM[i]!)
        }
      }
      return wanting
    },
  }
}
