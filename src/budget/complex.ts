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

/** sinh z / z and cosh z from z², without loss of figures near zero, into four numbers: both parts of the one, then of the other. */
export function sinhAndCosh(squareRe: number, squareIm: number, out: Float64Array): void {
  if (squareRe * squareRe + squareIm * squareIm < SMALL * SMALL) {
    sinhAndCoshOfSmall(squareRe, squareIm, out)
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

/** sinh z / z = 1 + z²/3! + z⁴/5! + z⁶/7! + z⁸/9!, cosh z = 1 + z²/2! + z⁴/4! + z⁶/6! + z⁸/8!. */
function sinhAndCoshOfSmall(re: number, im: number, out: Float64Array): void {
  const re2 = re * re - im * im
  const im2 = 2 * re * im
  const re3 = re2 * re - im2 * im
  const im3 = re2 * im + im2 * re
  const re4 = re2 * re2 - im2 * im2
  const im4 = 2 * re2 * im2
  out[0] = 1 + (re * (1 / 6) + (re2 * (1 / 120) + (re3 * (1 / 5040) + re4 * (1 / 362880))))
  out[1] = im * (1 / 6) + (im2 * (1 / 120) + (im3 * (1 / 5040) + im4 * (1 / 362880)))
  out[2] = 1 + (re * 0.5 + (re2 * (1 / 24) + (re3 * (1 / 720) + re4 * (1 / 40320))))
  out[3] = im * 0.5 + (im2 * (1 / 24) + (im3 * (1 / 720) + im4 * (1 / 40320)))
}
