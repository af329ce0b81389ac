import { degToRad } from '../units'
import { WGS84_A_M, WGS84_E2 } from './earth'
import type { Position } from './position'

/** A place on the Universal Polar Stereographic grid, m. */
export interface UpsPoint {
  readonly isNorth: boolean
  readonly eastingM: number
  readonly northingM: number
}

/** Scale at the pole, and what both coordinates of the pole are, m. DMA TM 8358.2 (1989), chapter 3. */
const K0 = 0.994
const POLE_M = 2_000_000

const E = Math.sqrt(WGS84_E2)
/** Radius of the plane's circle for a small distance from the pole, m a radian of it. J. P. Snyder, USGS PP 1395 (1987), eq. 21-33. */
const RADIUS_M = (2 * WGS84_A_M * K0) / Math.sqrt((1 + E) ** (1 + E) * (1 - E) ** (1 - E))

/**
 * Easting and northing on the UPS grid of the nearer pole, m.
 *
 * Polar stereographic projection, ρ = R t, with Snyder's t of eq. 15-9. Source: J. P. Snyder, Map Projections (USGS PP 1395, 1987), eq. 21-30 to
 * 21-33; scale and false coordinates of DMA TM 8358.2 (1989), chapter 3. Range: beyond 84° N and 80° S the grid is in use; further out it still holds.
 */
export function upsFromLonLat([lonDeg, latDeg]: Position): UpsPoint {
  const isNorth = latDeg >= 0
  const sin = Math.sin(degToRad(Math.abs(latDeg)))
  // tan(π/4 − φ/2) = cos φ / (1 + sin φ): nothing cancels near the pole.
  const cos = Math.cos(degToRad(Math.abs(latDeg)))
  const t = (cos / (1 + sin)) * ((1 + E * sin) / (1 - E * sin)) ** (E / 2)
  const lon = degToRad(lonDeg)
  const fromPoleM = RADIUS_M * t
  return {
    isNorth,
    eastingM: POLE_M + fromPoleM * Math.sin(lon),
    northingM: POLE_M + (isNorth ? -1 : 1) * fromPoleM * Math.cos(lon),
  }
}

const SQUARE_M = 100_000
/** Rounding of the reckoning: the pole itself lies on the corner of a square. */
const ROUNDING_M = 1e-6
const POLE_SQUARE = POLE_M / SQUARE_M
/**
 * Letters of the squares of 100 km: columns west and east of the pole, rows from the south upwards, without I and O; of the columns without what
 * UTM's own zones beside them have. The first row, by square. DMA TM 8358.1 (1990), chapter 5 and appendix B.
 */
const LETTERS = {
  north: { zones: 'YZ', west: 'RSTUXYZ', east: 'ABCFGHJ', rows: 'ABCDEFGHJKLMNP', firstRow: 13 },
  south: {
    zones: 'AB',
    west: 'JKLPQRSTUXYZ',
    east: 'ABCFGHJKLPQR',
    rows: 'ABCDEFGHJKLMNPQRSTUVWXYZ',
    firstRow: 8,
  },
} as const

/** The polar grid reference of a position to 1 m, spaced to be read out: `Z AH 00000 00000`; undefined where its letters do not reach. */
export function upsReference(position: Position): string | undefined {
  const { isNorth, eastingM, northingM } = upsFromLonLat(position)
  const { zones, west, east, rows, firstRow } = LETTERS[isNorth ? 'north' : 'south']
  const [eastM, northM] = [Math.floor(eastingM + ROUNDING_M), Math.floor(northingM + ROUNDING_M)]
  const [column, row] = [Math.floor(eastM / SQUARE_M), Math.floor(northM / SQUARE_M)]
  const isEast = column >= POLE_SQUARE
  const columnLetter = isEast ? east[column - POLE_SQUARE] : west[column - POLE_SQUARE + west.length]
  const rowLetter = rows[row - firstRow]
  if (!columnLetter || !rowLetter) return undefined
  const figures = (m: number) => String(m % SQUARE_M).padStart(5, '0')
  return `${zones[isEast ? 1 : 0]} ${columnLetter}${rowLetter} ${figures(eastM)} ${figures(northM)}`
}
