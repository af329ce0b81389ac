/** A round rod driven straight down, its top at the surface. */
export interface DrivenRod {
  readonly lengthM: number
  readonly diameterM: number
}

/**
 * Resistance of one driven rod to distant earth, Ω.
 *
 * R = ρ / (2πL) · [ln(8L / d) − 1].
 *
 * Source: H. B. Dwight, Calculation of Resistances to Ground, AIEE 1936; IEEE Std 142 and MIL-HDBK-419A use it.
 * Range: rods many times longer than thick, in even soil.
 *
 * @param soilOhmM resistivity of the soil, Ω·m
 */
export const rodOhms = ({ lengthM, diameterM }: DrivenRod, soilOhmM: number): number =>
  (soilOhmM / (2 * Math.PI * lengthM)) * (Math.log((8 * lengthM) / diameterM) - 1)

/** By how much n rods, a rod's length apart in a line, ring or square, fall short of 1/n: IEEE Std 142, table 14. */
const SHORTFALL: readonly (readonly [rods: number, factor: number])[] = [
  [1, 1],
  [2, 1.16],
  [3, 1.29],
  [4, 1.36],
  [8, 1.68],
  [12, 1.8],
  [16, 1.92],
  [20, 2],
  [24, 2.16],
]

const MOST_RODS = SHORTFALL[SHORTFALL.length - 1]![0]

/**
 * Resistance of several equal rods in parallel, at least a rod's length apart, Ω.
 *
 * R₁ F / n, with the multiplying factor F, in between in proportion to n.
 *
 * Source: IEEE Std 142, table 14, as a mailing list quotes it.
 * Range: 1 to 24 rods.
 */
export function rodsOhms(rod: DrivenRod, soilOhmM: number, rods: number): number {
  if (!(rods >= 1 && rods <= MOST_RODS)) throw new RangeError(`${rods} rods: the table has 1 to ${MOST_RODS}`)
  const upper = SHORTFALL.findIndex(([n]) => n >= rods)
  const [n1, f1] = SHORTFALL[upper]!
  const [n0, f0] = SHORTFALL[Math.max(0, upper - 1)]!
  const factor = n1 === n0 ? f1 : f0 + ((f1 - f0) * (rods - n0)) / (n1 - n0)
  return (rodOhms(rod, soilOhmM) * factor) / rods
}
