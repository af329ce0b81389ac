import { abs, type Complex } from '../../src/budget/complex'
import { type LineConstants, propagation } from '../../src/budget/line-constants'
import { DB_PER_NEPER, METRES_PER_MILE, radToDeg } from '../../src/units'

export const KM_PER_MILE = METRES_PER_MILE / 1000

/** Constants as works print them: Ω, mH, nF and µS for each unit of length (km, or mile if that is what comes out too). */
export const printedLine = (line: {
  readonly ohm: number
  readonly milliH?: number
  readonly nanoF: number
  readonly microS?: number
}): LineConstants => ({
  ohmPerKm: line.ohm,
  henryPerKm: (line.milliH ?? 0) / 1000,
  faradPerKm: line.nanoF * 1e-9,
  siemensPerKm: (line.microS ?? 0) * 1e-6,
})

/** Loss per unit of length of the constants, dB. */
export const lossDb = (line: LineConstants, hz: number): number =>
  DB_PER_NEPER * propagation(line, hz).gammaPerKm.re

/** Phase velocity, units of length per second. */
export const velocity = (line: LineConstants, hz: number): number =>
  (2 * Math.PI * hz) / propagation(line, hz).gammaPerKm.im

export const angleDeg = (z: Complex): number => radToDeg(Math.atan2(z.im, z.re))

/** Modulus and angle of the characteristic impedance. */
export const z0 = (line: LineConstants, hz: number) => {
  const { z0Ohm } = propagation(line, hz)
  return { ohm: abs(z0Ohm), deg: angleDeg(z0Ohm) }
}
