import { degreeM } from '../../src/geo/earth'
import type { ElevationGrid } from '../../src/terrain/elevation-grid'

/** Where the made grids lie: 14° E, 46.5° N. */
export const LON = 14
export const LAT = 46.5
const { lonM, latM } = degreeM(LAT)

/** A position so many metres east and north of the middle. */
export const place = (eastM: number, northM: number) => [LON + eastM / lonM, LAT + northM / latM] as const

/** Metres east and north of the middle. */
export const metresOf = ([lonDeg, latDeg]: readonly [number, number, number?]): [number, number] => [
  (lonDeg - LON) * lonM,
  (latDeg - LAT) * latM,
]

/** A square grid whose heights are a function of metres east and north of its middle, as floats or as whole metres. */
export function gridOver(
  heightM: (eastM: number, northM: number) => number,
  cellM: number,
  { whole = false, sideM = 6000 } = {},
): ElevationGrid {
  const side = Math.ceil(sideM / cellM)
  const at = (i: number) => (i - (side - 1) / 2) * cellM
  const heights = whole ? new Int16Array(side * side) : new Float32Array(side * side)
  for (let row = 0; row < side; row++) {
    for (let column = 0; column < side; column++) {
      const height = heightM(at(column), -at(row))
      heights[row * side + column] = whole ? Math.round(height) : height
    }
  }
  return {
    name: 'made',
    crs: { kind: 'geographic' },
    columns: side,
    rows: side,
    transform: {
      x0: LON + at(0) / lonM,
      xPerColumn: cellM / lonM,
      xPerRow: 0,
      y0: LAT - at(0) / latM,
      yPerColumn: 0,
      yPerRow: -cellM / latM,
    },
    heights,
  }
}
