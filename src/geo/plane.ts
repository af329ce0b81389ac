import { degreeM } from './earth'
import { shortWayDeg, wrapLonDeg } from './longitude'
import type { Position } from './position'

/** Metres east and north of a plane's middle. */
export type PlanePoint = readonly [eastM: number, northM: number]

/** A flat picture of the ground about one point, true north up. */
export interface Plane {
  readonly middle: readonly [lonDeg: number, latDeg: number]
  toPlane(position: Position): PlanePoint
  toPosition(point: PlanePoint): readonly [lonDeg: number, latDeg: number]
}

/**
 * Plane metres about a middle: equirectangular, with the ellipsoid's radii of curvature at the middle latitude.
 *
 * Source: J. P. Snyder, Map Projections: A Working Manual, USGS PP 1395 (1987), ch. 12 and eqs. 4-18, 4-20.
 * Range: within 0.1 % of the ground over 20 km below 60° of latitude, which is a hair on any printed scale.
 */
function planeAt(lonDeg: number, latDeg: number): Plane {
  const { lonM, latM } = degreeM(latDeg)
  return {
    middle: [lonDeg, latDeg],
    toPlane: ([lon, lat]) => [shortWayDeg(lon - lonDeg) * lonM, (lat - latDeg) * latM],
    toPosition: ([eastM, northM]) => [wrapLonDeg(lonDeg + eastM / lonM), latDeg + northM / latM],
  }
}

/** The plane about the middle of what positions span; places on both sides of the antimeridian stay together. */
export function planeAbout(positions: readonly Position[]): Plane {
  const firstDeg = positions[0]?.[0] ?? 0
  const eastDeg = middleOf(positions.map(([lonDeg]) => shortWayDeg(lonDeg - firstDeg)))
  return planeAt(wrapLonDeg(firstDeg + eastDeg), middleOf(positions.map(([, latDeg]) => latDeg)))
}

const middleOf = (values: readonly number[]): number =>
  values.length === 0
    ? 0
    : (values.reduce((a, b) => Math.min(a, b)) + values.reduce((a, b) => Math.max(a, b))) / 2
