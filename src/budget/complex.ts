/** Complex numbers, as far as line theory needs them. */
export interface Complex {
  readonly re: number
  readonly im: number
}

export const ZERO: Complex = { re: 0, im: 0 }
export const ONE: Complex = { re: 1, im: 0 }

export const complex = (re: number, im = 0): Complex => ({ re, im })
export const add = (a: Complex, b: Complex): Complex => ({ re: a.re + b.re, im: a.im + b.im })
export const subtract = (a: Complex, b: Complex): Complex => ({ re: a.re - b.re, im: a.im - b.im })
export const multiply = (a: Complex, b: Complex): Complex => ({
  re: a.re * b.re - a.im * b.im,
  im: a.re * b.im + a.im * b.re,
})

/** √(re² + im²) without overflow, as `Math.hypot` has it, which takes its arguments as a list and many times as long. */
export function modulus(re: number, im: number): number {
  const [a, b] = [Math.abs(re), Math.abs(im)]
  const large = Math.max(a, b)
  if (large === 0 || large === Number.POSITIVE_INFINITY) return large
  const share = Math.min(a, b) / large
  return large * Math.sqrt(1 + share * share)
}

export const abs = (a: Complex): number => modulus(a.re, a.im)

export function divide(a: Complex, b: Complex): Complex {
  const square = b.re * b.re + b.im * b.im
  return { re: (a.re * b.re + a.im * b.im) / square, im: (a.im * b.re - a.re * b.im) / square }
}

/** The root with a real part that is not negative. */
export function sqrt(a: Complex): Complex {
  const modulus = abs(a)
  if (modulus === 0) return ZERO
  const re = Math.sqrt((modulus + Math.abs(a.re)) / 2)
  const im = Math.abs(a.im) / (2 * re)
  const signed = a.im < 0 ? -1 : 1
  return a.re >= 0 ? { re, im: signed * im } : { re: im, im: signed * re }
}

/** Below this |z²| the series of sinh and cosh are taken; the next term of either is below 1e-16 there. */
const SMALL = 0.01
const SINH_TERMS = [42, 20, 6]
const COSH_TERMS = [30, 12, 2]

/** sinh z / z and cosh z from z², without loss of figures near zero, into four numbers: both parts of the one, then of the other. */
export function sinhAndCosh(squareRe: number, squareIm: number, out: Float64Array): void {
  if (modulus(squareRe, squareIm) < SMALL) {
    // sinh z / z = 1 + z²/6 (1 + z²/20 (1 + z²/42 (1 + z²/72))), cosh z = 1 + z²/2 (1 + z²/12 (1 + z²/30 (1 + z²/56))).
    series(squareRe, squareIm, 72, SINH_TERMS, out, 0)
    series(squareRe, squareIm, 56, COSH_TERMS, out, 2)
    return
  }
  const large = Math.sqrt((modulus(squareRe, squareIm) + Math.abs(squareRe)) / 2)
  const small = Math.abs(squareIm) / (2 * large)
  const re = squareRe >= 0 ? large : small
  const im = (squareIm < 0 ? -1 : 1) * (squareRe >= 0 ? small : large)
  const grown = Math.expm1(re)
  const sinh = (grown + grown / (grown + 1)) / 2
  const cosh = (grown + 1 + 1 / (grown + 1)) / 2
  const [sin, cos] = [Math.sin(im), Math.cos(im)]
  const [sRe, sIm] = [sinh * cos, cosh * sin]
  const square = re * re + im * im
  out[0] = (sRe * re + sIm * im) / square
  out[1] = (sIm * re - sRe * im) / square
  out[2] = cosh * cos
  out[3] = sinh * sin
}

function series(x: number, y: number, last: number, terms: readonly number[], out: Float64Array, at: number) {
  let re = 1 + x / last
  let im = y / last
  for (let k = 0; k < terms.length; k++) {
    const divisor = terms[k]!
    const next = 1 + (x * re - y * im) / divisor
    im = (x * im + y * re) / divisor
    re = next
  }
  out[at] = re
  out[at + 1] = im
}
