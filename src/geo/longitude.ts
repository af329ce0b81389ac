/** The same longitude, turned by whole circles to lie within 180° of another: may leave −180…180. */
export const nearLonDeg = (lonDeg: number, refLonDeg: number): number =>
  lonDeg - 360 * Math.round((lonDeg - refLonDeg) / 360)

/** A difference of longitudes, or of any two courses, taken the short way round: −180…180°. */
export const shortWayDeg = (deg: number): number => (Math.abs(deg) <= 180 ? deg : nearLonDeg(deg, 0))

/** A longitude as a plan holds it, −180…180. */
export const wrapLonDeg = (lonDeg: number): number => shortWayDeg(lonDeg)

/** Longitudes of a path so that every leg goes the short way round the earth, the first within 180° of the reference. */
export function unrolled(
  path: readonly (readonly [lonDeg: number, latDeg: number, elevationM?: number])[],
  refLonDeg: number,
): readonly (readonly [number, number])[] {
  let lastDeg = refLonDeg
  return path.map(([lonDeg, latDeg]) => {
    lastDeg = nearLonDeg(lonDeg, lastDeg)
    return [lastDeg, latDeg]
  })
}
