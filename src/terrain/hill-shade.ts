import { degToRad } from '../units'

/** Light from the north-west, 45° high, as maps have it. */
export const MAP_LIGHT = { azimuthDeg: 315, altitudeDeg: 45 } as const

/**
 * Shade of each point of a lattice of heights: 1 (in the dark) to 255 (lit full), 0 where the ground is not known.
 *
 * cos of the angle between the light and the ground's normal, its slope by Horn's weighted differences of the eight neighbours.
 * Source: B. K. P. Horn, Hill shading and the reflectance map, Proc. IEEE 69 (1981), p. 14.
 *
 * @param stepM distance between neighbours, m, across and down
 * @param exaggeration factor on heights, so that gentle ground shows
 */
export function hillShade(
  heightsM: Float32Array,
  columns: number,
  rows: number,
  stepM: { readonly acrossM: number; readonly downM: number },
  light: { readonly azimuthDeg: number; readonly altitudeDeg: number } = MAP_LIGHT,
  exaggeration = 1,
): Uint8Array<ArrayBuffer> {
  const azimuth = degToRad(light.azimuthDeg)
  const altitude = degToRad(light.altitudeDeg)
  const lightEast = Math.sin(azimuth) * Math.cos(altitude)
  const lightNorth = Math.cos(azimuth) * Math.cos(altitude)
  const lightUp = Math.sin(altitude)
  const shade = new Uint8Array(columns * rows)
  for (let row = 0; row < rows; row++) {
    const above = Math.max(row - 1, 0) * columns
    const here = row * columns
    const below = Math.min(row + 1, rows - 1) * columns
    const spanDownM = (Math.min(row + 1, rows - 1) - Math.max(row - 1, 0)) * stepM.downM * 4
    for (let column = 0; column < columns; column++) {
      const left = Math.max(column - 1, 0)
      const right = Math.min(column + 1, columns - 1)
      const h = (base: number, c: number) => heightsM[base + c]!
      const spanAcrossM = (right - left) * stepM.acrossM * 4
      const east =
        (h(above, right) +
          2 * h(here, right) +
          h(below, right) -
          h(above, left) -
          2 * h(here, left) -
          h(below, left)) /
        spanAcrossM
      const south =
        (h(below, left) +
          2 * h(below, column) +
          h(below, right) -
          h(above, left) -
          2 * h(above, column) -
          h(above, right)) /
        spanDownM
      const dzEast = east * exaggeration
      const dzNorth = -south * exaggeration
      const lit =
        (lightUp - lightEast * dzEast - lightNorth * dzNorth) / Math.sqrt(1 + dzEast ** 2 + dzNorth ** 2)
      if (!Number.isNaN(lit)) shade[here + column] = 1 + Math.round(254 * Math.max(0, lit))
    }
  }
  return shade
}
