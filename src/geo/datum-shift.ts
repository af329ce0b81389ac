import type { GridCrs } from './projection'

/** That a system rests on another datum than WGS 84, and is brought there by one shift for all of where it is used. */
export interface DatumShift {
  /** How well the shift is known, m; undefined where nobody says. */
  readonly accuracyM: number | undefined
}

const NO_SHIFT = /^[0.,+-]*$/
/** What the EPSG dataset says of a shift whose accuracy nobody knows, m. */
const UNKNOWN_M = 999
/** Finer ones lead to ETRS89 and its kin, which agree with WGS 84 itself to a metre at best. */
const SURE_M = 1

/**
 * The shift in a system's definition; undefined where it has none, or none that moves anything.
 *
 * Source of accuracies: EPSG Geodetic Parameter Dataset, "operation accuracy" of the transformation that the definition has its
 * figures from (scripts/make-systems.mjs).
 */
export function datumShiftOf(crs: GridCrs): DatumShift | undefined {
  const figures = crs.kind === 'other' && /\+towgs84=(\S+)/.exec(crs.definition)?.[1]
  if (!figures || NO_SHIFT.test(figures)) return undefined
  const said = Number(/\+accuracy=(\S+)/.exec(crs.definition)?.[1])
  return { accuracyM: said < UNKNOWN_M ? Math.max(said, SURE_M) : undefined }
}
