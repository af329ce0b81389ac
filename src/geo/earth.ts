import { degToRad } from '../units'

/** Semi-major axis of the WGS 84 ellipsoid, m, and the square of its first eccentricity. NIMA TR8350.2, 3rd ed., table 3.1 and 3.3. */
export const WGS84_A_M = 6378137
const WGS84_E2 = 6.69437999014e-3

/**
 * Radii of curvature of the WGS 84 ellipsoid at a latitude, m: along the meridian, and across it (prime vertical).
 *
 * M = a(1 − e²) / (1 − e² sin² φ)^(3/2), N = a / √(1 − e² sin² φ).
 *
 * Source: J. P. Snyder, Map Projections: A Working Manual, USGS Professional Paper 1395 (1987), eqs. 4-18 and 4-20.
 */
export function radiiOfCurvatureM(latDeg: number): {
  readonly meridianM: number
  readonly primeVerticalM: number
} {
  const w = 1 - WGS84_E2 * Math.sin(degToRad(latDeg)) ** 2
  return { meridianM: (WGS84_A_M * (1 - WGS84_E2)) / w ** 1.5, primeVerticalM: WGS84_A_M / Math.sqrt(w) }
}

/** Metres that a degree of longitude and a degree of latitude are long at a latitude: N cos φ and M, by π / 180. */
export function degreeM(latDeg: number): { readonly lonM: number; readonly latM: number } {
  const { meridianM, primeVerticalM } = radiiOfCurvatureM(latDeg)
  return { lonM: degToRad(primeVerticalM * Math.cos(degToRad(latDeg))), latM: degToRad(meridianM) }
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
