/** Solves a small dense system A x = b by Gaussian elimination with row pivoting. The matrix and b are used up. */
export function solveReal(matrix: number[][], right: number[]): number[] {
  const n = right.length
  for (let column = 0; column < n; column++) {
    let pivot = column
    for (let row = column + 1; row < n; row++) {
      if (Math.abs(matrix[row]![column]!) > Math.abs(matrix[pivot]![column]!)) pivot = row
    }
    ;[matrix[column], matrix[pivot]] = [matrix[pivot]!, matrix[column]!]
    ;[right[column], right[pivot]] = [right[pivot]!, right[column]!]
    for (let row = column + 1; row < n; row++) {
      const factor = matrix[row]![column]! / matrix[column]![column]!
      if (factor === 0) continue
      for (let k = column; k < n; k++) matrix[row]![k]! -= factor * matrix[column]![k]!
      right[row]! -= factor * right[column]!
    }
  }
  for (let row = n - 1; row >= 0; row--) {
    for (let k = row + 1; k < n; k++) right[row]! -= matrix[row]![k]! * right[k]!
    right[row]! /= matrix[row]![row]!
  }
  return right
}
