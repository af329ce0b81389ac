import { degreeM } from '../geo/earth'
import { shortWayDeg } from '../geo/longitude'
import { isInDegrees, type Projection, projectionOf } from '../geo/projection'
import { bilinearM, cellOf, type ElevationGrid, type Extent } from './elevation-grid'
import type { Ground } from './ground'

/** Ground that knows its grids, so that a profile can be drawn of it and a map painted. */
export interface GridGround extends Ground {
  /** Finest first. */
  readonly grids: readonly ElevationGrid[]
  /** Heights at even points of a straight leg, both ends among them, m; NaN where not known. */
  heightsAlongM(from: LonLat, to: LonLat, mapM: number): Float64Array
  /** Heights on an even lattice laid over a patch, row by row, m; NaN where not known. */
  heightsOverM(patch: Patch): Float32Array
}

/** A patch of the globe with a lattice on it: where the point at a fraction of its width and of its height lies. */
export interface Patch {
  readonly columns: number
  readonly rows: number
  readonly at: (across: number, down: number) => readonly [lonDeg: number, latDeg: number]
}

type LonLat = readonly [lonDeg: number, latDeg: number, elevationM?: number]

/** A leg is projected at points this far apart, m, and straight between them: the bend of a meridian over it is under 5 mm. */
const PROJECT_EVERY_M = 500

/** A patch is projected at so many points a side, and bilinear between them: off by under a metre in 20 km. */
const PATCH_NODES = 32

/**
 * Least step between samples where heights are whole metres. Rounding puts a variance of 1/6 m² on each height difference, and
 * so 1/12 s² too much on a length: at 15 m, 0.04 %.
 */
const WHOLE_METRE_STEP_M = 15

interface Sampler {
  readonly grid: ElevationGrid
  readonly extent: Extent
  readonly cellM: number
  readonly stepM: number
  heightM(lonDeg: number, latDeg: number): number
  heightsAlongM(from: LonLat, to: LonLat, intervals: number, spans: number): Float64Array
  /** Writes heights where there are none yet, and says whether any are still wanting. */
  fill(heightsM: Float32Array, patch: Patch): boolean
}

/** The stretch of the globe that a grid covers, to the outer edges of its cells. */
export function extentOf(
  grid: Pick<ElevationGrid, 'crs' | 'transform' | 'columns' | 'rows'>,
  projection = projectionOf(grid.crs),
): Extent {
  const { transform: t, columns, rows } = grid
  let [westDeg, southDeg, eastDeg, northDeg] = [Infinity, Infinity, -Infinity, -Infinity]
  let middleDeg: number | undefined
  const EDGE = 16
  for (let i = 0; i <= EDGE; i++) {
    for (let j = 0; j <= EDGE; j++) {
      if (i > 0 && i < EDGE && j > 0 && j < EDGE) continue
      const column = (columns * i) / EDGE - 0.5
      const row = (rows * j) / EDGE - 0.5
      const x = t.x0 + t.xPerColumn * column + t.xPerRow * row
      const y = t.y0 + t.yPerColumn * column + t.yPerRow * row
      const [rawDeg, latDeg] = projection.inverse(x, y)
      middleDeg ??= rawDeg
      const isWhole = isInDegrees(grid.crs) || grid.crs.kind === 'web-mercator'
      const lonDeg = isWhole ? rawDeg : middleDeg + shortWayDeg(rawDeg - middleDeg)
      westDeg = Math.min(westDeg, lonDeg)
      eastDeg = Math.max(eastDeg, lonDeg)
      southDeg = Math.min(southDeg, latDeg)
      northDeg = Math.max(northDeg, latDeg)
    }
  }
  return { westDeg, southDeg, eastDeg, northDeg }
}

/** Side of a cell on the ground at the grid's middle, m: the shorter of its two. */
export function cellSizeM(grid: ElevationGrid, extent = extentOf(grid)): number {
  const { transform: t } = grid
  const latDeg = (extent.southDeg + extent.northDeg) / 2
  const { lonM, latM } = degreeM(latDeg)
  const mercator = Math.cos((latDeg * Math.PI) / 180)
  if (grid.crs.kind === 'other') return otherCellSizeM(grid)
  const [xM, yM] =
    grid.crs.kind === 'geographic' ? [lonM, latM] : grid.crs.kind === 'utm' ? [1, 1] : [mercator, mercator]
  return Math.min(
    Math.hypot(t.xPerColumn * xM, t.yPerColumn * yM),
    Math.hypot(t.xPerRow * xM, t.yPerRow * yM),
  )
}

/** The same of a system whose unit and scale only its projection knows: from the middle cell to the ones beside and below it. */
function otherCellSizeM({ crs, transform: t, columns, rows }: ElevationGrid): number {
  const projection = projectionOf(crs)
  const at = (column: number, row: number) =>
    projection.inverse(
      t.x0 + t.xPerColumn * column + t.xPerRow * row,
      t.y0 + t.yPerColumn * column + t.yPerRow * row,
    )
  const [c, r] = [columns / 2, rows / 2]
  const [lonDeg, latDeg] = at(c, r)
  const { lonM, latM } = degreeM(latDeg)
  const apartM = ([lon, lat]: readonly [number, number]) =>
    Math.hypot(shortWayDeg(lon - lonDeg) * lonM, (lat - latDeg) * latM)
  return Math.min(apartM(at(c + 1, r)), apartM(at(c, r + 1)))
}

const inWholeMetres = ({ heights }: ElevationGrid): boolean => {
  const every = Math.max(1, Math.floor(heights.length / 4096))
  for (let i = 0; i < heights.length; i += every) {
    const height = heights[i]!
    if (Number.isFinite(height) && !Number.isInteger(height)) return false
  }
  return true
}

function samplerOf(grid: ElevationGrid): Sampler {
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
    extent,
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

const hasVoid = (heightsM: Float64Array): boolean => heightsM.some(Number.isNaN)

/**
 * Ground from elevation grids, the finest first: where it is void or ends, the next one answers.
 *
 * A leg lies on one grid if any covers the whole of it, so that no seam between two datums looks like a cliff.
 */
export function groundFromGrids(grids: readonly ElevationGrid[]): GridGround {
  const samplers = grids.map(samplerOf).sort((a, b) => a.cellM - b.cellM)

  const sampleLeg = (from: LonLat, to: LonLat, mapM: number): Float64Array => {
    let merged: Float64Array | undefined
    for (const sampler of samplers) {
      const intervals = Math.max(1, Math.ceil(mapM / sampler.stepM))
      const spans = Math.max(1, Math.ceil(mapM / PROJECT_EVERY_M))
      const heightsM = sampler.heightsAlongM(from, to, intervals, spans)
      if (!hasVoid(heightsM)) return heightsM
      merged ??= heightsM.every(Number.isNaN) ? undefined : heightsM
    }
    if (!merged) return new Float64Array(2).fill(Number.NaN)
    const intervals = merged.length - 1
    return merged.map((heightM, i) => {
      if (!Number.isNaN(heightM)) return heightM
      const t = i / intervals
      return heightAt(from[0] + shortWayDeg(to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t)
    })
  }

  const heightAt = (lonDeg: number, latDeg: number): number => {
    for (const sampler of samplers) {
      const heightM = sampler.heightM(lonDeg, latDeg)
      if (!Number.isNaN(heightM)) return heightM
    }
    return Number.NaN
  }

  return {
    grids: samplers.map((sampler) => sampler.grid),
    hasEightBits: grids.some(({ heights }) => heights.BYTES_PER_ELEMENT === 1),
    heightM: (lonDeg, latDeg) => {
      const heightM = heightAt(lonDeg, latDeg)
      return Number.isNaN(heightM) ? undefined : heightM
    },
    heightsAlongM: sampleLeg,
    heightsOverM: (patch) => {
      const heightsM = new Float32Array(patch.columns * patch.rows).fill(Number.NaN)
      for (const sampler of samplers) if (!sampler.fill(heightsM, patch)) break
      return heightsM
    },
    groundM: (from, to, mapM) => {
      const heightsM = sampleLeg(from, to, mapM)
      const runM = mapM / (heightsM.length - 1)
      // Summed as what the slope adds, so that flat ground is exactly as long as the map.
      let addedM = 0
      for (let i = 1; i < heightsM.length; i++) {
        const riseM = heightsM[i]! - heightsM[i - 1]!
        addedM += Math.sqrt(runM * runM + riseM * riseM) - runM
      }
      return Number.isNaN(addedM) ? undefined : mapM + addedM
    },
  }
}
