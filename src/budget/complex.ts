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
export const scale = (a: Complex, k: number): Complex => ({ re: a.re * k, im: a.im * k })
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

export const sinh = (a: Complex): Complex => ({
  re: Math.sinh(a.re) * Math.cos(a.im),
  im: Math.cosh(a.re) * Math.sin(a.im),
})

const TAYLOR = [42, 20, 6]

/** sinh z / z from z², without loss of figures near zero. */
export function sinhOverArgument(square: Complex): Complex {
  if (abs(square) < 0.01) {
    // Taylor: 1 + z²/6 (1 + z²/20 (1 + z²/42 (1 + z²/72))); the next term is below 1e-17 here.
    const { re: x, im: y } = square
    let re = 1 + x / 72
    let im = y / 72
    for (let k = 0; k < TAYLOR.length; k++) {
      const divisor = TAYLOR[k]!
      const next = 1 + (x * re - y * im) / divisor
      im = (x * im + y * re) / divisor
      re = next
    }
    return { re, im }
  }
  const z = sqrt(square)
  return divide(sinh(z), z)
}
