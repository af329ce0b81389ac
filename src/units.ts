/** Exact factors, each with its definition. Convert only in `panel`, `sheet` and `files`. */

/** International foot: exactly 0.3048 m (1959 agreement). */
export const METRES_PER_FOOT = 0.3048
/** Statute mile: 5280 ft, exactly 1609.344 m. */
export const METRES_PER_MILE = 5280 * METRES_PER_FOOT
/** Inch: exactly 25.4 mm. */
export const MM_PER_INCH = 25.4
/** International pound: exactly 0.45359237 kg. */
export const KG_PER_POUND = 0.45359237
/** Pound-force: the pound times standard gravity 9.80665 m/s². */
export const NEWTONS_PER_POUND_FORCE = KG_PER_POUND * 9.80665
/** One neper in decibels: 20 / ln 10. */
export const DB_PER_NEPER = 20 / Math.LN10

export const degToRad = (deg: number): number => (deg * Math.PI) / 180
export const radToDeg = (rad: number): number => (rad * 180) / Math.PI
