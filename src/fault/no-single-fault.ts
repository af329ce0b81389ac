import { STEP_NEPERS } from '../field/gauge'
import { cholesky, solveLower } from '../field/linear-fit'
import { addDoubts, doubtsOf } from './doubts'
import type { Setup } from './glimpse'
import { NOTHING_WRONG, SEVERAL } from './hypotheses'
import { dot, LN_2PI, lnSum } from './log-sums'
import type { Bench } from './observation'
import { LN_BALANCED_BY_CHANCE } from './reckoner'

/** A reading that no single fault would bring about is as likely as any other in so many nepers. */
const ANY_NEPERS = 12

const SOUND = { kind: 'leak', element: 'none', toEarth: false } as const

/** Logarithm of the chance that nothing is wrong, as it stands beside those of single faults. */
export function lnNothingWrong(bench: Bench, setups: readonly Setup[]): number {
  const doubts = doubtsOf(bench)
  const ways = setups.map(({ observations, witnesses, way }) => {
    const n = observations.length
    const sound = observations.map((each) => each.sound())
    const rows = new Float64Array(n * doubts.count)
    const offset = new Float64Array(n)
    const slopeOf = (row: number, f: number) => (sound[row]![f + 1]! - sound[row]![0]!) / STEP_NEPERS
    doubts.rows(observations, [...observations.keys()], slopeOf, { rows, offset })
    const start = Float64Array.from(observations, ({ read }, k) => read - sound[k]![0]! + offset[k]!)
    const lower = new Float64Array(n * n)
    for (const [a, { sigma }] of observations.entries()) lower[a * n + a] = sigma ** 2
    addDoubts(lower, rows, n, doubts.count)
    cholesky(lower, n)
    let lnRoot = 0
    for (let a = 0; a < n; a++) lnRoot += Math.log(lower[a * n + a]!)
    solveLower(lower, n, start)
    const bridged = observations.filter((each) => !each.bears(SOUND)).length
    const told = witnesses.reduce((sum, witness) => sum + witness.sound(), 0)
    const ln = told + bridged * LN_BALANCED_BY_CHANCE - lnRoot - (n / 2) * LN_2PI - dot(start, start) / 2
    return ln + Math.log(NOTHING_WRONG * way.chance)
  })
  return lnSum(ways)
}

/** The same that there is more than one fault, or that one of the readings is wrong: it takes two to disagree. */
export function lnSeveral([first]: readonly Setup[]): number {
  const { observations, witnesses } = first!
  if (observations.length + witnesses.length < 2) return Number.NEGATIVE_INFINITY
  return Math.log(SEVERAL) - observations.length * Math.log(ANY_NEPERS) - witnesses.length * Math.LN2
}
