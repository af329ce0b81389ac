/**
 * Solves a small dense system A x = b by Gaussian elimination with row pivoting. A lies row by row; x takes the place of b, and A is used up.
 *
 * @param n how many unknowns there are; both may have room for more
 */
export function solveReal(matrix: Float64Array, right: Float64Array, n: number): void {
  for (let column = 0; column < n; column++) {
    let pivot = column
    for (let row = column + 1; row < n; row++) {
      if (Math.abs(matrix[row * n + column]!) > Math.abs(matrix[pivot * n + column]!)) pivot = row
    }
    if (pivot !== column) swapRows(matrix, right, n, column, pivot)
    for (let row = column + 1; row < n; row++) {
      const factor = matrix[row * n + column]! / matrix[column * n + column]!
      if (factor === 0) continue
      for (let k = column; k < n; k++) matrix[row * n + k]! -= factor * matrix[column * n + k]!
      right[row]! -= factor * right[column]!
    }
  }
  for (let row = n - 1; row >= 0; row--) {
    for (let k = row + 1; k < n; k++) right[row]! -= matrix[row * n + k]! * right[k]!
    right[row]! /= matrix[row * n + row]!
  }
}

function swapRows(matrix: Float64Array, right: Float64Array, n: number, a: number, b: number): void {
  for (let k = 0; k < n; k++) {
    const kept = matrix[a * n + k]!
    matrix[a * n + k] = matrix[b * n + k]!
    matrix[b * n + k] = kept
  }
  const kept = right[a]!
  right[a] = right[b]!
  right[b] = kept
}
