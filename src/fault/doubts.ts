import { type Bench, type Observation, tempNepers } from './observation'

/** What is not known of the wire beside the fault: each of its figures, and the temperature where nobody took it. */
export interface Doubts {
  readonly count: number
  /**
   * Doubts of some observations, a row each, in standard deviations of each figure and of the temperature, and how far off the figures
   * put each reading for being tried elsewhere than at the catalog's.
   */
  readonly rows: (
    observations: readonly Observation[],
    borne: readonly number[],
    slopeOf: (row: number, figure: number) => number,
    out: { readonly rows: Float64Array; readonly offset: Float64Array },
  ) => void
}

export function doubtsOf({ figures, model, nepers }: Bench): Doubts {
  const alpha = figures.map(({ wire, member }) =>
    member === 'loopOhmPerKm'
      ? tempNepers(model.lines.find((line) => line.wire.id === wire)?.wire.tempCoeffPerC ?? 0)
      : 0,
  )
  const count = figures.length + 1
  return {
    count,
    rows: (observations, borne, slopeOf, { rows, offset }) => {
      for (const [row, k] of borne.entries()) {
        let [byTemp, tried] = [0, 0]
        for (const [f, { sigma }] of figures.entries()) {
          const slope = slopeOf(row, f)
          rows[row * count + f] = slope * sigma
          byTemp += slope * alpha[f]!
          tried += slope * nepers[f]!
        }
        rows[row * count + figures.length] = observations[k]!.untaken ? byTemp : 0
        offset[row] = tried
      }
    },
  }
}

/** Adds what the doubts have in common to a lower triangle: J Jᵀ. */
export function addDoubts(lower: Float64Array, rows: Float64Array, n: number, count: number): void {
  for (let a = 0; a < n; a++) {
    for (let b = 0; b <= a; b++) {
      let sum = 0
      for (let f = 0; f < count; f++) sum += rows[a * count + f]! * rows[b * count + f]!
      lower[a * n + b]! += sum
    }
  }
}
