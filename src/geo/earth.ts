import { degToRad } from '../units'

/** Semi-major axis of the WGS 84 ellipsoid, m, and its flattening. NIMA TR8350.2, 3rd ed. (1997), table 3.1. */
export const WGS84_A_M = 6378137
export const WGS84_F = 1 / 298.257223563
/** The square of its first eccentricity. */
export const WGS84_E2 = WGS84_F * (2 - WGS84_F)

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
