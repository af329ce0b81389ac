import { MM_PER_INCH } from '../units'

/**
 * Bare diameter of a solid wire of the American gauge, mm.
 *
 * d = 0.005 in · 92^((36 − n)/39): 39 equal steps from no. 36 (0.005 in) to no. 0000 (0.46 in).
 *
 * Source: ASTM B258. Range: 0000 (n = −3) to 40.
 */
export const awgDiameterMm = (gauge: number): number => 0.005 * MM_PER_INCH * 92 ** ((36 - gauge) / 39)
