import { cholesky, solveLower } from '../field/linear-fit'
import { addDoubts, doubtsOf } from './doubts'
import { COARSE, type Glimpse, type Setup, type Spot, spotAt } from './glimpse'
import { dot, LN_2PI, lnAverage, lnSum } from './log-sums'
import type { Bench } from './observation'

/** A bridge that balances where it should not. */
export const LN_BALANCED_BY_CHANCE = -5

/** A stretch of a line, and what would be read at its ends and in its middle. */
export interface WorkCell {
  readonly line: string
  readonly from: Spot
  readonly middle: Spot
  readonly to: Spot
  /** Logarithm of its chance, not yet against all others, by setup and hypothesis. */
  readonly ln: readonly Float64Array[]
}

/** One stretch of a fault's ohms on one stretch of a line, as a draw needs it. */
export interface Reckoned {
  /** The lower triangle of the readings' covariance, their doubts, what is read at the first ohms less what would be, and its change to the last. */
  readonly lower: Float64Array
  readonly rows: Float64Array
  readonly start: Float64Array
  readonly change: Float64Array
}

/** Chances of a stretch by setup and hypothesis, and the logarithm below which one is out of the question. */
export interface Before {
  readonly ln: readonly Float64Array[]
  readonly leastLn: number
}

export type Reckoner = ReturnType<typeof reckonerOf>

/** Reckons stretches, and halves them. */
export function reckonerOf(bench: Bench, setups: readonly Setup[]) {
  const doubts = doubtsOf(bench)
  const { length: figures } = bench.figures
  const { hypotheses } = bench

  /** Logarithm of the chance of what was read, by stretch of a fault's ohms, on a stretch of a line. */
  const lnByOhms = (
    cell: Pick<WorkCell, 'from' | 'middle' | 'to'>,
    s: number,
    h: number,
    keep?: (u: number, reckoned: Reckoned) => void,
  ): Float64Array => {
    const { observations } = setups[s]!
    const { lnOhms, chances } = hypotheses[h]!
    const [from, middle, to] = [cell.from, cell.middle, cell.to].map((spot) => spot.seen(s, h)) as [
      Glimpse,
      Glimpse,
      Glimpse,
    ]
    const { borne } = middle
    const n = borne.length
    const missed = LN_BALANCED_BY_CHANCE * (observations.length - n)
    const rows = new Float64Array(n * doubts.count)
    const lower = new Float64Array(n * n)
    const [start, change, offset] = [new Float64Array(n), new Float64Array(n), new Float64Array(n)]
    const [along, bent] = [new Float64Array(n), new Float64Array(n)]
    const out = new Float64Array(chances.length)
    for (let u = 0; u < chances.length; u++) {
      const next = Math.min(u + 1, lnOhms.length - 1)
      const c = Math.floor(u / COARSE)
      const past = (u - c * COARSE + 0.5) / COARSE
      const near = c * n * figures
      const far = (lnOhms.length === 1 ? c : c + 1) * n * figures
      const slopeOf = (row: number, f: number) => {
        const at = row * figures + f
        const here = middle.slopes[near + at]!
        return here + (middle.slopes[far + at]! - here) * past
      }
      doubts.rows(observations, borne, slopeOf, { rows, offset })
      for (let row = 0; row < n; row++) {
        const { read } = observations[borne[row]!]!
        const [i, j] = [u * n + row, next * n + row]
        const first = (from.values[i]! + 4 * middle.values[i]! + to.values[i]!) / 6
        const last = (from.values[j]! + 4 * middle.values[j]! + to.values[j]!) / 6
        start[row] = read - first + offset[row]!
        change[row] = first - last
        along[row] = (to.values[i]! - from.values[i]! + to.values[j]! - from.values[j]!) / 2
        const midway = (from.values[i]! + to.values[i]! + from.values[j]! + to.values[j]!) / 4
        bent[row] = (middle.values[i]! + middle.values[j]!) / 2 - midway
      }
      for (let a = 0; a < n; a++) {
        for (let b = 0; b <= a; b++)
          lower[a * n + b] = (along[a]! * along[b]!) / 12 + (bent[a]! * bent[b]!) / STRAIGHTNESS
        lower[a * n + a]! += observations[borne[a]!]!.sigma ** 2 + (BENT_LOOSELY * bent[a]!) ** 2
      }
      addDoubts(lower, rows, n, doubts.count)
      cholesky(lower, n)
      keep?.(u, { lower, rows, start, change })
      let lnRoot = 0
      for (let a = 0; a < n; a++) lnRoot += Math.log(lower[a * n + a]!)
      solveLower(lower, n, start)
      solveLower(lower, n, change)
      const witnessed = (at: number) =>
        (from.witnessed[at]! + 2 * middle.witnessed[at]! + to.witnessed[at]!) / 4
      const lnWitness = witnessed(c) + (lnOhms.length === 1 ? 0 : (witnessed(c + 1) - witnessed(c)) * past)
      out[u] =
        Math.log(chances[u]!) +
        lnWitness +
        missed -
        lnRoot -
        (n / 2) * LN_2PI +
        lnAverage(dot(change, change), dot(change, start), dot(start, start))
    }
    return out
  }

  const spot = (line: string, wireM: number, side: number): Spot => spotAt(bench, setups, line, wireM, side)

  /** @param of what is known of the stretch before: a kind of fault that is out of the question there is not reckoned again */
  const cell = (line: string, from: Spot, to: Spot, of?: Before): WorkCell => {
    const middleM = (from.wireM + to.wireM) / 2
    const spots = { from, middle: spot(line, middleM, middleM), to }
    const ln = setups.map(({ way }, s) =>
      Float64Array.from(hypotheses, ({ chance }, h) => {
        const before = of?.ln[s]?.[h]
        if (of && before !== undefined && before < of.leastLn) return before
        return lnSum(lnByOhms(spots, s, h)) + Math.log(chance * way.chance)
      }),
    )
    return { line, ...spots, ln }
  }

  const halves = (whole: WorkCell, leastLn: number): readonly WorkCell[] => {
    const { line, from, middle, to, ln } = whole
    return [cell(line, from, middle, { ln, leastLn }), cell(line, middle, to, { ln, leastLn })]
  }

  return { spot, cell, halves, lnByOhms, doubts }
}

/**
 * A stretch is as good as its middle with an error of its length over √12, and where readings do not follow it straight, of a parabola's
 * own error: 16 (1/80 − 1/144) of the square of how far its middle lies off. It may bend more than a parabola: what is bent is taken
 * loosely, so that no stretch is left out for it before it has been cut finer.
 */
const STRAIGHTNESS = 1 / (16 * (1 / 80 - 1 / 144))
const BENT_LOOSELY = 0.25
