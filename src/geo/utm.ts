import { degToRad, radToDeg } from '../units'
import { WGS84_A_M, WGS84_E2, WGS84_F } from './earth'
import { shortWayDeg, wrapLonDeg } from './longitude'
import type { Position } from './position'

/** A place on the Universal Transverse Mercator grid, m. South of the equator the northing is negative: no false northing. */
export interface UtmPoint {
  readonly zone: number
  readonly eastingM: number
  readonly northingM: number
}

const E = Math.sqrt(WGS84_E2)
/** Scale on the central meridian, and its easting, m. DMA TM 8358.2 (1989), section 2-2. */
const K0 = 0.9996
const FALSE_EASTING_M = 500_000
/** Added to northings south of the equator when they are written down, m. Same place. */
export const FALSE_NORTHING_M = 10_000_000

const n = WGS84_F / (2 - WGS84_F)
const RECTIFYING_M = (WGS84_A_M / (1 + n)) * (1 + n ** 2 / 4 + n ** 4 / 64)
const ALPHA = [
  n / 2 - (2 / 3) * n ** 2 + (5 / 16) * n ** 3 + (41 / 180) * n ** 4,
  (13 / 48) * n ** 2 - (3 / 5) * n ** 3 + (557 / 1440) * n ** 4,
  (61 / 240) * n ** 3 - (103 / 140) * n ** 4,
  (49561 / 161280) * n ** 4,
]
const BETA = [
  n / 2 - (2 / 3) * n ** 2 + (37 / 96) * n ** 3 - (1 / 360) * n ** 4,
  (1 / 48) * n ** 2 + (1 / 15) * n ** 3 - (437 / 1440) * n ** 4,
  (17 / 480) * n ** 3 - (37 / 840) * n ** 4,
  (4397 / 161280) * n ** 4,
]

const centralMeridianDeg = (zone: number): number => zone * 6 - 183

/** Whether the grid reaches a latitude: from 80° S to 84° N. DMA TM 8358.2 (1989), section 2-1. */
export const hasUtm = (latDeg: number): boolean => latDeg >= -80 && latDeg <= 84

/** The grid zone of a place, 1…60, with the wider zones of south-west Norway and Svalbard. Source: DMA TM 8358.1 (1990), section 3-2. */
export function utmZone(lonDeg: number, latDeg: number): number {
  const lon = wrapLonDeg(lonDeg)
  if (latDeg >= 56 && latDeg < 64 && lon >= 3 && lon < 12) return 32
  if (latDeg >= 72 && latDeg <= 84 && lon >= 0 && lon < 42)
    return lon < 9 ? 31 : lon < 21 ? 33 : lon < 33 ? 35 : 37
  return lon === 180 ? 1 : Math.floor((lon + 180) / 6) + 1
}

/** tan of the conformal latitude from tan of the geodetic one. Karney (2011), eqs. 7–9. */
function conformalTan(tau: number): number {
  const sigma = Math.sinh(E * Math.atanh((E * tau) / Math.hypot(1, tau)))
  return tau * Math.hypot(1, sigma) - sigma * Math.hypot(1, tau)
}

/**
 * Easting and northing of a place in a grid zone, m.
 *
 * Krüger's series to the fourth power of the third flattening.
 *
 * Source: C. F. F. Karney, Transverse Mercator with an accuracy of a few nanometers, J. Geodesy 85 (2011), eqs. 7–11, 35.
 * Range: latitudes −80…84°, within 10° of the central meridian to better than 1 mm.
 */
export function utmFromLonLat(lonDeg: number, latDeg: number, zone = utmZone(lonDeg, latDeg)): UtmPoint {
  const tauC = conformalTan(Math.tan(degToRad(latDeg)))
  const dLon = degToRad(shortWayDeg(lonDeg - centralMeridianDeg(zone)))
  const xi0 = Math.atan2(tauC, Math.cos(dLon))
  const eta0 = Math.asinh(Math.sin(dLon) / Math.hypot(tauC, Math.cos(dLon)))
  let xi = xi0
  let eta = eta0
  for (const [i, a] of ALPHA.entries()) {
    const k = 2 * (i + 1)
    xi += a * Math.sin(k * xi0) * Math.cosh(k * eta0)
    eta += a * Math.cos(k * xi0) * Math.sinh(k * eta0)
  }
  return {
    zone,
    eastingM: FALSE_EASTING_M + K0 * RECTIFYING_M * eta,
    northingM: K0 * RECTIFYING_M * xi,
  }
}

/** Longitude (within 180° of the zone's central meridian) and latitude of a place on the grid, degrees. Same source, eqs. 11, 19–21, 36. */
export function lonLatFromUtm({ zone, eastingM, northingM }: UtmPoint): [lonDeg: number, latDeg: number] {
  const xi = northingM / (K0 * RECTIFYING_M)
  const eta = (eastingM - FALSE_EASTING_M) / (K0 * RECTIFYING_M)
  let xi0 = xi
  let eta0 = eta
  for (const [i, b] of BETA.entries()) {
    const k = 2 * (i + 1)
    xi0 -= b * Math.sin(k * xi) * Math.cosh(k * eta)
    eta0 -= b * Math.cos(k * xi) * Math.sinh(k * eta)
  }
  const tauC = Math.sin(xi0) / Math.hypot(Math.sinh(eta0), Math.cos(xi0))
  const dLon = Math.atan2(Math.sinh(eta0), Math.cos(xi0))
  let tau = tauC
  for (let step = 0; step < 5; step++) {
    const guess = conformalTan(tau)
    const slope = ((1 - WGS84_E2) * Math.hypot(1, tau)) / (1 + (1 - WGS84_E2) * tau * tau)
    tau += (tauC - guess) / Math.hypot(1, guess) / slope
    if (Math.abs(guess - tauC) < 1e-14 * Math.max(1, Math.abs(tauC))) break
  }
  return [centralMeridianDeg(zone) + radToDeg(dLon), radToDeg(Math.atan(tau))]
}

/** A northing as it is written, m: south of the equator with the false northing. */
export const writtenNorthingM = (northingM: number, south = northingM < 0): number =>
  south ? northingM + FALSE_NORTHING_M : northingM

/** Short enough that a meridian is straight over it, long enough that rounding is lost in it, °. */
const STEP_DEG = 1e-3

/**
 * Grid convergence at a position, °: the angle from true north to the grid north of a zone, east positive.
 *
 * The direction of a short piece of meridian on the grid, turned about. Range: the zone and the ones beside it.
 */
export function gridConvergenceDeg([lonDeg, latDeg]: Position, zone = utmZone(lonDeg, latDeg)): number {
  const south = utmFromLonLat(lonDeg, latDeg - STEP_DEG / 2, zone)
  const north = utmFromLonLat(lonDeg, latDeg + STEP_DEG / 2, zone)
  return -radToDeg(Math.atan2(north.eastingM - south.eastingM, north.northingM - south.northingM))
}
