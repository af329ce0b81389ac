import { degreeM } from '../geo/earth'
import { shortWayDeg } from '../geo/longitude'
import { isInDegrees, projectionOf } from '../geo/projection'
import type { ElevationGrid, Extent } from './elevation-grid'

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
