/** Chances by their logarithms: of what is far off they are too small for a number. */
export const LN_2PI = Math.log(2 * Math.PI)

/** Sum of the products. */
export const dot = (a: Float64Array, b: Float64Array): number => {
  let sum = 0
  for (let k = 0; k < a.length; k++) sum += a[k]! * b[k]!
  return sum
}

/** Solves Lᵀ x = b, over b. */
export function solveUpper(lower: Float64Array, n: number, b: Float64Array): Float64Array {
  for (let i = n - 1; i >= 0; i--) {
    let sum = b[i]!
    for (let k = i + 1; k < n; k++) sum -= lower[k * n + i]! * b[k]!
    b[i] = sum / lower[i * n + i]!
  }
  return b
}

/** Logarithm of a sum, from the logarithms of its parts. */
export function lnSum(parts: ArrayLike<number>): number {
  let most = Number.NEGATIVE_INFINITY
  for (let k = 0; k < parts.length; k++) most = Math.max(most, parts[k]!)
  if (most === Number.NEGATIVE_INFINITY) return most
  let sum = 0
  for (let k = 0; k < parts.length; k++) sum += Math.exp(parts[k]! - most)
  return most + Math.log(sum)
}

/** Parts of the whole, from their logarithms. */
export const shares = (ln: readonly number[]): readonly number[] => {
  const whole = lnSum(ln)
  return ln.map((each) => Math.exp(each - whole))
}

/** Logarithm of the average over t from 0 to 1 of exp(−(a t² + 2 b t + c) / 2), by the error function. */
export function lnAverage(a: number, b: number, c: number): number {
  const at = (t: number) => -(a * t * t + 2 * b * t + c) / 2
  if (a > 1e-3) {
    const root = Math.sqrt(a / 2)
    const [low, high] = [(b / a) * root, (1 + b / a) * root]
    const part = erf(high) - erf(low)
    if (part > 1e-5) return -(c - (b * b) / a) / 2 + Math.log((part * Math.sqrt(Math.PI)) / (2 * root))
  }
  // Far out, or nearly even: Simpson's rule on what is left.
  return lnSum([at(0) - Math.log(6), at(0.5) + Math.log(4 / 6), at(1) - Math.log(6)])
}

/** Chance that a standard normal number is below this. */
export const phi = (z: number): number => 0.5 * (1 + erf(z / Math.SQRT2))

/** Error function to 1.5e-7. Source: M. Abramowitz and I. Stegun, Handbook of Mathematical Functions (1964), 7.1.26. */
function erf(x: number): number {
  const t = 1 / (1 + 0.3275911 * Math.abs(x))
  const poly =
    t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))))
  const value = 1 - poly * Math.exp(-x * x)
  return x < 0 ? -value : value
}
