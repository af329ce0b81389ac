import { forward } from 'mgrs'

/** Beyond these latitudes the military grid is polar, and the package knows only the zones between. */
const SOUTH_DEG = -80
const NORTH_DEG = 84

/** `32T PT 12345 67890`: a place on the military grid, the parts apart as they are spoken; empty near the poles. */
export const gridReference = (lonDeg: number, latDeg: number): string =>
  latDeg < SOUTH_DEG || latDeg > NORTH_DEG
    ? ''
    : forward([lonDeg, latDeg], 5).replace(/^(\d+\w)(\w\w)(\d{5})(\d{5})$/, '$1 $2 $3 $4')
