import proj4 from 'proj4'
import { degToRad, radToDeg } from '../units'
import { WGS84_A_M } from './earth'

/** How a grid's own x and y relate to WGS 84 longitude and latitude. */
export type GridCrs =
  | { readonly kind: 'geographic' }
  | { readonly kind: 'utm'; readonly zone: number; readonly south: boolean }
  | { readonly kind: 'web-mercator' }

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

/** The projection of a grid. UTM: proj4's transverse Mercator, good to a millimetre within its zone and the next. */
export function projectionOf(crs: GridCrs): Projection {
  switch (crs.kind) {
    case 'geographic':
      return GEOGRAPHIC
    case 'web-mercator':
      return WEB_MERCATOR
    case 'utm': {
      const utm = proj4(`+proj=utm +zone=${crs.zone}${crs.south ? ' +south' : ''} +datum=WGS84 +units=m`)
      return {
        forward: (lonDeg, latDeg) => utm.forward([lonDeg, latDeg]) as [number, number],
        inverse: (x, y) => utm.inverse([x, y]) as [number, number],
      }
    }
  }
}
