import { add, type Complex, complex, divide, multiply, ONE, sinhAndCosh, sqrt } from './complex'
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

/** Where a line is reckoned: its chain matrix as A − 1, B, C, D − 1, and its π as the series arm and both shunts, each in two parts. */
const chain = new Float64Array(8)
const pi = new Float64Array(6)
/** sinh ½γl / ½γl and cosh ½γl. */
const half = new Float64Array(4)

const complexAt = (parts: Float64Array, at: number): Complex => complex(parts[at]!, parts[at + 1]!)

const NO_ELECTRODES = [0, 0] as const

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
  electrodeOhm: readonly [number, number] = NO_ELECTRODES,
): Chain {
  reckonChain(kilometre, lengthKm, electrodeOhm)
  return {
    aLessOne: complexAt(chain, 0),
    bOhm: complexAt(chain, 2),
    cSiemens: complexAt(chain, 4),
    dLessOne: complexAt(chain, 6),
  }
}

/** The same into `chain`, number by number: a net asks for so many lines that objects would cost more than the sums. */
function reckonChain(
  { seriesOhm, shuntSiemens, square, nepers }: Kilometre,
  lengthKm: number,
  electrodeOhm: readonly [number, number],
): void {
  const fromOhm = electrodeOhm[0]
  const toOhm = electrodeOhm[1]
  const km = nepers * lengthKm > FAR_NEPERS ? FAR_NEPERS / nepers : lengthKm
  const squareRe = square.re * km * km
  const squareIm = square.im * km * km
  sinhAndCosh(squareRe / 4, squareIm / 4, half)
  const halfRe = half[0]!
  const halfIm = half[1]!
  const coshRe = half[2]!
  const coshIm = half[3]!
  // sinh x / x = (sinh ½x / ½x) cosh ½x, and cosh x − 1 = ½ x² (sinh ½x / ½x)².
  const wholeRe = (halfRe * coshRe - halfIm * coshIm) * km
  const wholeIm = (halfRe * coshIm + halfIm * coshRe) * km
  const twiceRe = halfRe * halfRe - halfIm * halfIm
  const twiceIm = 2 * halfRe * halfIm
  const coshLessOneRe = 0.5 * (squareRe * twiceRe - squareIm * twiceIm)
  const coshLessOneIm = 0.5 * (squareRe * twiceIm + squareIm * twiceRe)
  const bRe = seriesOhm.re * wholeRe - seriesOhm.im * wholeIm
  const bIm = seriesOhm.re * wholeIm + seriesOhm.im * wholeRe
  const cRe = shuntSiemens.re * wholeRe - shuntSiemens.im * wholeIm
  const cIm = shuntSiemens.re * wholeIm + shuntSiemens.im * wholeRe
  const bothOhm = fromOhm + toOhm
  const productOhm = fromOhm * toOhm
  chain[0] = coshLessOneRe + cRe * fromOhm
  chain[1] = coshLessOneIm + cIm * fromOhm
  chain[2] = bRe + (1 + coshLessOneRe) * bothOhm + cRe * productOhm
  chain[3] = bIm + coshLessOneIm * bothOhm + cIm * productOhm
  chain[4] = cRe
  chain[5] = cIm
  chain[6] = coshLessOneRe + cRe * toOhm
  chain[7] = coshLessOneIm + cIm * toOhm
}

/** A chain matrix as a π section: 1/B between the ends, (D − 1)/B and (A − 1)/B across them. */
export function piSection({ aLessOne, bOhm, cSiemens, dLessOne }: Chain): PiSection {
  for (const [k, { re, im }] of [aLessOne, bOhm, cSiemens, dLessOne].entries()) {
    chain[2 * k] = re
    chain[2 * k + 1] = im
  }
  reckonPi()
  return { series: complexAt(pi, 0), shuntFrom: complexAt(pi, 2), shuntTo: complexAt(pi, 4) }
}

/** What stands in `chain` into `pi`. */
function reckonPi(): void {
  const isTiny = Math.abs(chain[2]!) + Math.abs(chain[3]!) < LEAST_OHM
  const bRe = isTiny ? LEAST_OHM : chain[2]!
  const bIm = isTiny ? 0 : chain[3]!
  const squareOhm = bRe * bRe + bIm * bIm
  const yRe = bRe / squareOhm
  const yIm = -bIm / squareOhm
  const aRe = chain[0]!
  const aIm = chain[1]!
  const dRe = chain[6]!
  const dIm = chain[7]!
  pi[0] = yRe
  pi[1] = yIm
  pi[2] = dRe * yRe - dIm * yIm
  pi[3] = dRe * yIm + dIm * yRe
  pi[4] = aRe * yRe - aIm * yIm
  pi[5] = aRe * yIm + aIm * yRe
}

/** A uniform line of so many km as a π: series arm, shunt at its start, shunt at its end, S, each in two parts. They hold until the next is asked for. */
export function piOf(
  kilometre: Kilometre,
  lengthKm: number,
  electrodeOhm: readonly [number, number] | null,
): Float64Array {
  reckonChain(kilometre, lengthKm, electrodeOhm ?? NO_ELECTRODES)
  reckonPi()
  return pi
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
