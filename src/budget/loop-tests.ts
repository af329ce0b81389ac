/**
 * Murray loop: ohms of the faulty wire up to the fault, Ω, with a good wire joined to it at the far end.
 *
 * x = L · a / (a + b). Source: Hawkins Electrical Guide, vol. 3 (1914), loop tests.
 *
 * @param loopOhm L, both wires to the far end and back, Ω
 * @param nearArm a, bridge arm next to the faulty wire
 * @param farArm b, bridge arm next to the good wire
 */
export const murrayOhm = (loopOhm: number, nearArm: number, farArm: number): number =>
  (loopOhm * nearArm) / (nearArm + farArm)

/**
 * Varley loop: ohms of the faulty wire up to the fault, Ω: x = (b L − a R) / (a + b); with equal arms (L − R) / 2.
 *
 * Derived from the balance a / b = (L − x) / (R + x), with the rheostat R in series with the faulty wire.
 * Source of the arrangement: Hawkins Electrical Guide, vol. 3 (1914).
 *
 * @param goodArm a, bridge arm next to the good wire
 * @param faultyArm b, bridge arm next to the rheostat and the faulty wire
 */
export const varleyOhm = (loopOhm: number, rheostatOhm: number, goodArm = 1, faultyArm = 1): number =>
  (faultyArm * loopOhm - goodArm * rheostatOhm) / (goodArm + faultyArm)
