import { contours as marchingSquares } from 'd3-contour'

/** Outlines of an area on the globe: each outline with its holes. */
export type Area = readonly (readonly (readonly (readonly [lonDeg: number, latDeg: number])[])[])[]

/** A lattice of cells, and where a point lies that is given in cells from its corner. */
interface Lattice {
  readonly columns: number
  readonly rows: number
  readonly toDeg: (point: readonly [x: number, y: number]) => readonly [lonDeg: number, latDeg: number]
}

/** What is as good as without end beside any limit: marching squares reckon with no infinity. */
const FAR = 1e9

/**
 * The area in which the values of a lattice are at most a limit, by marching squares, straight between the middles of two cells. Beside a
 * cell without end it stops at the last one that has a value.
 */
export function ringsWithin(values: Float32Array, { columns, rows, toDeg }: Lattice, limit: number): Area {
  const depths = Array.from(values, (value) => -Math.min(value, FAR))
  const { coordinates } = marchingSquares().size([columns, rows]).contour(depths, -limit)
  return coordinates.map((polygon) => polygon.map((ring) => ring.map(([x, y]) => toDeg([x!, y!]))))
}
