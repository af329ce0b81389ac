/** A pivot smaller than this beside the largest means that the rows do not determine the figures. */
const SMALLEST = 1e-12

/**
 * The figures x for which rows · x comes nearest to what is wanted, least squares; undefined where the rows do not determine them.
 *
 * By Householder's reflections, which lose half as many digits as the normal equations. Source: G. Golub and C. Van Loan, Matrix Computations,
 * 4th ed. (2013), algorithms 5.2.1 and 5.3.2. Range: as many rows as figures, or more.
 */
export function leastSquares(
  rows: readonly (readonly number[])[],
  wanted: readonly number[],
): number[] | undefined {
  const count = rows[0]?.length ?? 0
  if (rows.length < count || count === 0) return undefined
  const a = rows.map((row, i) => [...row, wanted[i]!])
  const largest = Math.max(...rows.flat().map(Math.abs))
  for (let k = 0; k < count; k++) {
    const norm = Math.hypot(...a.slice(k).map((row) => row[k]!))
    if (!(norm > SMALLEST * largest)) return undefined
    const alpha = a[k]![k]! > 0 ? -norm : norm
    const v = a.slice(k).map((row, i) => row[k]! - (i === 0 ? alpha : 0))
    const vv = v.reduce((sum, each) => sum + each * each, 0)
    for (let column = k; column <= count; column++) {
      const along = v.reduce((sum, each, i) => sum + each * a[k + i]![column]!, 0)
      for (const [i, each] of v.entries()) a[k + i]![column]! -= (2 * along * each) / vv
    }
  }
  const x = new Array<number>(count).fill(0)
  for (let k = count - 1; k >= 0; k--) {
    let rest = a[k]![count]!
    for (let j = k + 1; j < count; j++) rest -= a[k]![j]! * x[j]!
    x[k] = rest / a[k]![k]!
  }
  return x
}
