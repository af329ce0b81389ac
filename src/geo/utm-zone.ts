import { radToDeg } from '../units'
import { gridReference } from './grid-reference'
import type { Position } from './position'
import { projectionOf } from './projection'

/** One zone of the Universal Transverse Mercator, on WGS 84. */
export interface UtmZone {
  readonly zone: number
  readonly south: boolean
  /** Easting and northing, m; also of places in the zones beside it. */
  forward(position: Position): readonly [eastingM: number, northingM: number]
  inverse(eastingM: number, northingM: number): readonly [lonDeg: number, latDeg: number]
}

/** The zone that the grid reference of a position counts in, with the exceptions about Norway and Svalbard; undefined where there is none. */
export function utmZoneOf(position: Position): UtmZone | undefined {
  const reference = gridReference(position)
  if (!reference) return undefined
  const zone = Number.parseInt(reference, 10)
  const south = position[1] < 0
  const projection = projectionOf({ kind: 'utm', zone, south })
  return {
    zone,
    south,
    forward: ([lonDeg, latDeg]) => projection.forward(lonDeg, latDeg),
    inverse: projection.inverse,
  }
}

/** Short enough that a meridian is straight over it, long enough that rounding is lost in it, °. */
const STEP_DEG = 1e-3

/**
 * Grid convergence at a position, °: the angle from true north to grid north, east positive.
 *
 * The direction of a short piece of meridian on the grid, turned about. Range: the zone and the ones beside it.
 */
export function gridConvergenceDeg(zone: UtmZone, [lonDeg, latDeg]: Position): number {
  const north = latDeg + STEP_DEG > 90 ? -1 : 1
  const [e0, n0] = zone.forward([lonDeg, latDeg])
  const [e1, n1] = zone.forward([lonDeg, latDeg + north * STEP_DEG])
  return -radToDeg(Math.atan2(north * (e1 - e0), north * (n1 - n0)))
}
