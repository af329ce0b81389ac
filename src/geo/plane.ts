import { degToRad, radToDeg } from '../units'
import { radiiOfCurvatureM } from './earth'
import type { Position } from './position'

/** Metres east and north of a plane's middle. */
export type PlanePoint = readonly [eastM: number, northM: number]

/** A flat picture of the ground about one point, true north up. */
export interface Plane {
  readonly middle: readonly [lonDeg: number, latDeg: number]
  toPlane(position: Position): PlanePoint
  toPosition(point: PlanePoint): readonly [lonDeg: number, latDeg: number]
}

const wrap180 = (deg: number) => ((((deg + 180) % 360) + 360) % 360) - 180

/**
 * Plane metres from WGS 84: equirectangular, with the ellipsoid's radii of curvature at the middle latitude.
 *
 * Source: J. P. Snyder, Map Projections: A Working Manual, USGS PP 1395 (1987), ch. 12 and eqs. 4-18, 4-20.
 * Range: within 0.1 % of the ground over 20 km below 60° of latitude, which is a hair on any printed scale; a net that lies
 * across the antimeridian stays in one piece.
 */
export function planeAbout(positions: readonly Position[]): Plane {
  const first = positions[0] ?? [0, 0]
  const eastDeg = positions.map((position) => wrap180(position[0] - first[0]))
  const latDeg = positions.map((position) => position[1])
  const mid = (values: readonly number[]) =>
    values.length === 0
      ? 0
      : (values.reduce((a, b) => Math.min(a, b)) + values.reduce((a, b) => Math.max(a, b))) / 2
  const middle = [wrap180(first[0] + mid(eastDeg)), mid(latDeg)] as const
  const { meridianM, primeVerticalM } = radiiOfCurvatureM(middle[1])
  const eastM = primeVerticalM * Math.cos(degToRad(middle[1]))
  return {
    middle,
    toPlane: ([lonDeg, lat]) => [
      degToRad(wrap180(lonDeg - middle[0])) * eastM,
      degToRad(lat - middle[1]) * meridianM,
    ],
    toPosition: ([east, north]) => [
      wrap180(middle[0] + radToDeg(east / eastM)),
      middle[1] + radToDeg(north / meridianM),
    ],
  }
}
