/** What the terrain tells a measurement: heights, and how long the ground is between two points. */
export interface Ground {
  /** Some of it is of whole numbers from 0 to 255 (or −128 to 127), as pictures are. */
  readonly hasEightBits?: boolean
  /** Height above the datum of its grid, m; undefined off the grid or in a void. */
  heightM(lonDeg: number, latDeg: number): number | undefined
  /**
   * Length along the ground of a straight leg, m, or undefined where any of it lies off the grid.
   *
   * @param mapM the leg's length on the map, m
   */
  groundM(
    from: readonly [number, number, number?],
    to: readonly [number, number, number?],
    mapM: number,
  ): number | undefined
}
