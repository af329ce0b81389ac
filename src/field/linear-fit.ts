/** Readings that follow in proportion from figures that are not known exactly, all in units of their standard deviations. */
export interface Fit {
  /** Each figure's middle and standard deviation, given the readings, in standard deviations of what was known before. */
  readonly middle: Float64Array
  readonly sigma: Float64Array
  /** Covariance of the figures, row by row. */
  readonly covariance: Float64Array
  /**
   * For each reading: how far it lies from what all others and what was known before lead one to expect, nepers, and that over the
   * standard deviation of such a difference.
   */
  readonly apart: Float64Array
  readonly apartSigmas: Float64Array
}

/** The inverse of a symmetric positive matrix, row by row, by Cholesky's way; the matrix is used up. */
export function inverse(matrix: Float64Array, n: number): Float64Array {
  const out = new Float64Array(n * n)
  const lower = cholesky(matrix, n)
  const column = new Float64Array(n)
  for (let c = 0; c < n; c++) {
    column.fill(0)
    column[c] = 1
    solveLower(lower, n, column)
    for (let i = n - 1; i >= 0; i--) {
      let sum = column[i]!
      for (let k = i + 1; k < n; k++) sum -= lower[k * n + i]! * column[k]!
      column[i] = sum / lower[i * n + i]!
    }
    for (let r = 0; r < n; r++) out[r * n + c] = column[r]!
  }
  return out
}

/** The lower triangle L with L Lᵀ = matrix, written over it. */
export function cholesky(matrix: Float64Array, n: number): Float64Array {
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i * n + j]!
      for (let k = 0; k < j; k++) sum -= matrix[i * n + k]! * matrix[j * n + k]!
      matrix[i * n + j] = i === j ? Math.sqrt(Math.max(sum, 1e-300)) : sum / matrix[j * n + j]!
    }
  }
  return matrix
}

/** Solves L x = b, over b. */
export function solveLower(lower: Float64Array, n: number, b: Float64Array): Float64Array {
  for (let i = 0; i < n; i++) {
    let sum = b[i]!
    for (let k = 0; k < i; k++) sum -= lower[i * n + k]! * b[k]!
    b[i] = sum / lower[i * n + i]!
  }
  return b
}

/**
 * What readings teach of figures: y = offset + G z + error, with z standard normal before any reading. The middle is
 * (1 + GᵀW G)⁻¹ GᵀW (y − offset) with W the inverse of the errors' squares, and the covariance (1 + GᵀW G)⁻¹.
 *
 * Source: C. M. Bishop, Pattern Recognition and Machine Learning (2006), 3.3.1; leaving one out, 1/[V⁻¹]ᵢᵢ: C. E. Rasmussen and
 * C. K. I. Williams, Gaussian Processes for Machine Learning (2006), 5.4.2 (both from memory).
 *
 * @param slopes G, a row for each reading  @param apart y − offset
 */
export function fitReadings(
  slopes: readonly Float64Array[],
  apart: Float64Array,
  sigmas: Float64Array,
  figures: number,
): Fit {
  const n = apart.length
  const precision = new Float64Array(figures * figures)
  const right = new Float64Array(figures)
  for (let f = 0; f < figures; f++) precision[f * figures + f] = 1
  for (let r = 0; r < n; r++) {
    const weight = 1 / sigmas[r]! ** 2
    for (let f = 0; f < figures; f++) {
      const slope = slopes[r]![f]! * weight
      if (slope === 0) continue
      right[f]! += slope * apart[r]!
      for (let g = 0; g < figures; g++) precision[f * figures + g]! += slope * slopes[r]![g]!
    }
  }
  const covariance = inverse(precision, figures)
  const times = (row: number, by: ArrayLike<number>) => {
    let sum = 0
    for (let g = 0; g < figures; g++) sum += covariance[row * figures + g]! * by[g]!
    return sum
  }
  const middle = Float64Array.from({ length: figures }, (_, f) => times(f, right))
  const out = { apart: new Float64Array(n), apartSigmas: new Float64Array(n) }
  for (let r = 0; r < n; r++) {
    const slope = slopes[r]!
    let [fitted, spread] = [0, 0]
    for (let f = 0; f < figures; f++) {
      fitted += slope[f]! * middle[f]!
      spread += slope[f]! * times(f, slope)
    }
    // [V⁻¹]ᵢᵢ and [V⁻¹ e]ᵢ by what the other readings leave of this one.
    const variance = sigmas[r]! ** 2
    const left = Math.max(1e-12, 1 - spread / variance)
    out.apart[r] = (apart[r]! - fitted) / left
    out.apartSigmas[r] = out.apart[r]! / Math.sqrt(variance / left)
  }
  return {
    middle,
    sigma: Float64Array.from({ length: figures }, (_, f) => Math.sqrt(covariance[f * figures + f]!)),
    covariance,
    ...out,
  }
}
