import { add, type Complex, complex, divide, multiply, ONE, scale, sinhOverArgument, sqrt } from './complex'
import { type LineConstants, seriesOhmPerKm, shuntSiemensPerKm } from './line-constants'

/** Chain (ABCD) matrix of a line, with A − 1 and D − 1 kept apart so that short lines lose no figures. */
export interface Chain {
  readonly aLessOne: Complex
  readonly bOhm: Complex
  readonly cSiemens: Complex
  readonly dLessOne: Complex
}

/** The same line as a π: an admittance between its ends and one from each end across the pair, S. */
export interface PiSection {
  readonly series: Complex
  readonly shuntFrom: Complex
  readonly shuntTo: Complex
}

/** Beyond this many nepers nothing arrives (2600 dB): longer lines are taken as this long, so that cosh stays finite. */
const FAR_NEPERS = 300

/** A line with less series impedance than this is taken to have it, so that its admittance stays finite. */
const LEAST_OHM = 1e-6

/** One kilometre of a line at one frequency: what lines of all lengths share. */
export interface Kilometre {
  readonly seriesOhm: Complex
  readonly shuntSiemens: Complex
  /** γ². */
  readonly square: Complex
  readonly nepers: number
}

export function kilometreOf(line: LineConstants, hz: number): Kilometre {
  const seriesOhm = seriesOhmPerKm(line, hz)
  const shuntSiemens = shuntSiemensPerKm(line, hz)
  const square = multiply(seriesOhm, shuntSiemens)
  return { seriesOhm, shuntSiemens, square, nepers: sqrt(square).re }
}

/** Chain matrix of a uniform line of so many km at one frequency: see {@link chainOf}. */
export const lineChain = (
  line: LineConstants,
  lengthKm: number,
  hz: number,
  electrodeOhm?: readonly [number, number],
): Chain => chainOf(kilometreOf(line, hz), lengthKm, electrodeOhm)

/**
 * Chain matrix of a uniform line, exact: A = D = cosh γl, B = Z₀ sinh γl, C = sinh γl / Z₀.
 *
 * Written with sinh x / x, so that it holds for a line without shunt (γ = 0) as it stands, and at 0 Hz. Electrodes of an earth
 * return stand in series, one at each end: [1 R₁; 0 1] · line · [1 R₂; 0 1].
 *
 * Source: W. L. Everitt, Communication Engineering, 2nd ed. (1937), ch. 4 and 6 (from memory).
 *
 * @param electrodeOhm resistance of the electrode at each end, Ω
 */
export function chainOf(
  kilometre: Kilometre,
  lengthKm: number,
  electrodeOhm: readonly [number, number] = [0, 0],
): Chain {
  const far = kilometre.nepers * lengthKm > FAR_NEPERS
  const km = far ? FAR_NEPERS / kilometre.nepers : lengthKm

  const series = scale(kilometre.seriesOhm, km)
  const shunt = scale(kilometre.shuntSiemens, km)
  const square = scale(kilometre.square, km * km)
  const whole = sinhOverArgument(square)
  const half = sinhOverArgument(scale(square, 0.25))
  const coshLessOne = scale(multiply(square, multiply(half, half)), 0.5)
  const c = multiply(shunt, whole)
  const b = multiply(series, whole)

  const [fromOhm, toOhm] = electrodeOhm
  if (fromOhm === 0 && toOhm === 0) {
    return { aLessOne: coshLessOne, bOhm: b, cSiemens: c, dLessOne: coshLessOne }
  }
  const cosh = add(ONE, coshLessOne)
  return {
    aLessOne: add(coshLessOne, scale(c, fromOhm)),
    bOhm: add(add(b, scale(cosh, fromOhm + toOhm)), scale(c, fromOhm * toOhm)),
    cSiemens: c,
    dLessOne: add(coshLessOne, scale(c, toOhm)),
  }
}

/** A chain matrix as a π section: 1/B between the ends, (D − 1)/B and (A − 1)/B across them. */
export function piSection(chain: Chain): PiSection {
  const tiny = Math.abs(chain.bOhm.re) + Math.abs(chain.bOhm.im) < LEAST_OHM
  const b = tiny ? complex(LEAST_OHM) : chain.bOhm
  return {
    series: divide(ONE, b),
    shuntFrom: divide(chain.dLessOne, b),
    shuntTo: divide(chain.aLessOne, b),
  }
}

/** Two chains one behind the other: the matrix product. */
export function cascade(first: Chain, second: Chain): Chain {
  const a1 = add(ONE, first.aLessOne)
  const d1 = add(ONE, first.dLessOne)
  const a2 = add(ONE, second.aLessOne)
  const d2 = add(ONE, second.dLessOne)
  return {
    // a₁a₂ + b₁c₂ − 1, without taking the 1 away from a sum
    aLessOne: add(
      add(add(first.aLessOne, second.aLessOne), multiply(first.aLessOne, second.aLessOne)),
      multiply(first.bOhm, second.cSiemens),
    ),
    bOhm: add(multiply(a1, second.bOhm), multiply(first.bOhm, d2)),
    cSiemens: add(multiply(first.cSiemens, a2), multiply(d1, second.cSiemens)),
    dLessOne: add(
      add(add(first.dLessOne, second.dLessOne), multiply(first.dLessOne, second.dLessOne)),
      multiply(first.cSiemens, second.bOhm),
    ),
  }
}

/** Impedance that a source sees into a line ended by `load`, Ω: (A·Z + B) / (C·Z + D). */
export const inputOhm = (chain: Chain, load: Complex): Complex =>
  divide(
    add(add(load, multiply(chain.aLessOne, load)), chain.bOhm),
    add(add(multiply(chain.cSiemens, load), ONE), chain.dLessOne),
  )

/**
 * Insertion loss of a chain between a source and a load, dB: 20·log₁₀ |(A·Zl + B + C·Zs·Zl + D·Zs) / (Zs + Zl)|.
 *
 * Source: Reference Data for Radio Engineers, chapter on attenuators and networks (from memory).
 */
export function insertionLossDb(chain: Chain, source: Complex, load: Complex): number {
  const sum = add(
    add(add(load, multiply(chain.aLessOne, load)), chain.bOhm),
    add(multiply(multiply(chain.cSiemens, source), load), add(source, multiply(chain.dLessOne, source))),
  )
  const ratio = divide(sum, add(source, load))
  return 20 * Math.log10(Math.hypot(ratio.re, ratio.im))
}
