import { wrapLonDeg } from './longitude'

/** WGS 84, in the order of the file: longitude −180…180, latitude −90…90, elevation in m. */
export type Position = readonly [lonDeg: number, latDeg: number, elevationM?: number]

/** Seven decimals of a degree are about a centimetre: finer than any hand, and short in a file. */
const STEPS_PER_DEG = 1e7

// Adding 0 turns −0, which a file cannot hold, into 0.
const rounded = (deg: number) => Math.round(deg * STEPS_PER_DEG) / STEPS_PER_DEG + 0

/**
 * A position as a plan holds it: longitude wrapped to −180…180 (a map that is dragged round the world counts on past 180),
 * latitude held within −90…90, both rounded to a centimetre. Throws where a figure is not a number.
 */
export function onGlobe([lonDeg, latDeg, elevationM]: Position): Position {
  if (![lonDeg, latDeg, elevationM ?? 0].every(Number.isFinite))
    throw new Error(`no position: ${lonDeg}, ${latDeg}, ${elevationM}`)
  const lon = rounded(wrapLonDeg(lonDeg))
  const lat = rounded(Math.min(90, Math.max(-90, latDeg)))
  return elevationM === undefined ? [lon, lat] : [lon, lat, elevationM + 0]
}

export const samePosition = (a: Position, b: Position): boolean =>
  a[0] === b[0] && a[1] === b[1] && a[2] === b[2]
