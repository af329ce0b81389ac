import { degToRad } from '../units'

/** WGS 84 semi-major axis, m, and first eccentricity squared. Source: NIMA TR8350.2, 3rd ed., tables 3.1 and 3.3. */
const A_M = 6378137
const E2 = 0.00669437999014

/**
 * Metres a degree of longitude and a degree of latitude are long at a latitude.
 *
 * N cos φ and M, with N = a/√(1 − e² sin² φ) and M = a(1 − e²)/(1 − e² sin² φ)^{3/2}.
 * Source: J. P. Snyder, Map Projections: A Working Manual (1987), eqs. 4-18 to 4-21.
 */
export function degreeM(latDeg: number): { readonly lonM: number; readonly latM: number } {
  const phi = degToRad(latDeg)
  const w2 = 1 - E2 * Math.sin(phi) ** 2
  const n = A_M / Math.sqrt(w2)
  return { lonM: degToRad(n * Math.cos(phi)), latM: degToRad((n * (1 - E2)) / w2) }
}

/** A difference of longitudes taken the short way round, −180…180°. */
export const shortWayDeg = (deg: number): number => deg - 360 * Math.round(deg / 360)

type LonLat = readonly [lonDeg: number, latDeg: number, elevationM?: number]

/** Length of a short leg on the map, m, with the ellipsoid's radii at its middle latitude. Range: up to 20 km. */
export function legM(from: LonLat, to: LonLat): number {
  const { lonM, latM } = degreeM((from[1] + to[1]) / 2)
  return Math.hypot(shortWayDeg(to[0] - from[0]) * lonM, (to[1] - from[1]) * latM)
}

/** A flat frame about a place: metres east and north of it. Good to 0.1 % within 10 km. */
export interface LocalFrame {
  toM(position: LonLat): [eastM: number, northM: number]
  toDeg(eastM: number, northM: number): [lonDeg: number, latDeg: number]
}

export function localFrame(lonDeg: number, latDeg: number): LocalFrame {
  const { lonM, latM } = degreeM(latDeg)
  return {
    toM: (p) => [shortWayDeg(p[0] - lonDeg) * lonM, (p[1] - latDeg) * latM],
    toDeg: (eastM, northM) => [lonDeg + eastM / lonM, latDeg + northM / latM],
  }
}
