import { degToRad, radToDeg } from '../units'
import { WGS84_A_M } from './earth'
import { otherSystem } from './other-system'
import { lonLatFromUtm, utmFromLonLat, writtenNorthingM } from './utm'

/** How a grid's own x and y relate to WGS 84 longitude and latitude. */
export type GridCrs =
  | { readonly kind: 'geographic' }
  | { readonly kind: 'utm'; readonly zone: number; readonly south: boolean }
  | { readonly kind: 'web-mercator' }
  /** Any other, in the manner of PROJ: `loadOtherSystems` comes before its projection. */
  | { readonly kind: 'other'; readonly definition: string }

/** Between WGS 84 degrees and a grid's own x and y. */
export interface Projection {
  forward(lonDeg: number, latDeg: number): [x: number, y: number]
  inverse(x: number, y: number): [lonDeg: number, latDeg: number]
}

const GEOGRAPHIC: Projection = {
  forward: (lonDeg, latDeg) => [lonDeg, latDeg],
  inverse: (x, y) => [x, y],
}

/** Spherical Mercator on the equator's radius. Source: EPSG Guidance Note 7-2, method 1024. Range: ±85.06°. */
const WEB_MERCATOR: Projection = {
  forward: (lonDeg, latDeg) => [
    WGS84_A_M * degToRad(lonDeg),
    WGS84_A_M * Math.asinh(Math.tan(degToRad(latDeg))),
  ],
  inverse: (x, y) => [radToDeg(x / WGS84_A_M), radToDeg(Math.atan(Math.sinh(y / WGS84_A_M)))],
}

/** Whether x and y of a grid are degrees: they may run past 180 then. */
export const isInDegrees = (crs: GridCrs): boolean =>
  crs.kind === 'geographic' || (crs.kind === 'other' && crs.definition.startsWith('+proj=longlat'))

/** The projection of a grid; UTM is good to a millimetre within its zone and the ones beside it. */
export function projectionOf(crs: GridCrs): Projection {
  switch (crs.kind) {
    case 'geographic':
      return GEOGRAPHIC
    case 'web-mercator':
      return WEB_MERCATOR
    case 'utm':
      return utmProjection(crs.zone, crs.south)
    case 'other':
      return otherSystem(crs.definition)
  }
}

/** With the false northing for the south, on both sides of the equator: a grid may lie across it. */
function utmProjection(zone: number, south: boolean): Projection {
  const falseNorthingM = writtenNorthingM(0, south)
  return {
    forward: (lonDeg, latDeg) => {
      const { eastingM, northingM } = utmFromLonLat(lonDeg, latDeg, zone)
      return [eastingM, northingM + falseNorthingM]
    },
    inverse: (x, y) => lonLatFromUtm({ zone, eastingM: x, northingM: y - falseNorthingM }),
  }
}
