import type { CircuitModel } from './circuit-model'
import { completenessOf } from './completeness'
import type { Conditions } from './conditions'
import { type DrawnFigure, drawnModel } from './drawn-model'
import { worstCorner } from './envelope'
import { seededNormal } from './seeded'
import { leastUnder } from './verdict'

export const MOST_SAMPLES = 100_000

/** The share of samples in which every check passes and nothing is missing, with its 95 % Wilson interval. */
export interface Share {
  readonly works: number
  readonly low: number
  readonly high: number
}

/** A figure that the outcome hangs on, and its share of the doubt. */
export interface Tip {
  readonly what: string
  readonly entry: string
  readonly at?: string
  readonly share: number
}

/** How many of a hundred such circuits work, and what it hangs on. */
export interface Odds {
  readonly samples: number
  readonly today: Share
  readonly worst: Share
  readonly tips: readonly Tip[]
}

/** Tips are listed up to so many, and from this share on. */
const LISTED = 5
const LEAST_SHARE = 0.02

/** What a margin counts for at the most, nepers: far beyond it nothing hangs on how far. */
const MOST_NEPERS = 3

/**
 * Draws many circuits as real things vary (see `drawnModel`) and judges each today and in the worst corner of the envelope, the one
 * that the printed figures have least to spare in.
 *
 * Tips are correlation ratios: the part of the variance of the tightest margin that is explained by one figure alone, corrected
 * for the number of classes. Source: A. Saltelli et al., Global Sensitivity Analysis: The Primer (2008), ch. 4 (from memory).
 *
 * @param wanted.seed the same seed gives the same circuits
 */
export function oddsOf(
  model: CircuitModel,
  today: Conditions,
  wanted: { readonly samples: number; readonly seed: number },
): Odds {
  const { samples, seed } = wanted
  const { figures, draw } = drawnModel(model)
  const missing = completenessOf(model, today).missing
  const worst = worstCorner(model, today, missing).conditions
  const varies = missingVaries(model)
  const normal = seededNormal(seed)
  const drawn = figures.map(() => new Float64Array(samples))
  const todayNepers = new Float64Array(samples)
  const worstNepers = new Float64Array(samples)
  const normals = new Float64Array(figures.length)
  let [todayWorks, worstWorks] = [0, 0]
  for (let k = 0; k < samples; k++) {
    for (let i = 0; i < figures.length; i++) {
      normals[i] = normal()
      drawn[i]![k] = normals[i]!
    }
    const sample = draw(normals)
    const lacks = varies ? completenessOf(sample, today).missing : missing
    todayNepers[k] = nepersOf(sample, today)
    worstNepers[k] = nepersOf(sample, worst)
    if (lacks.length > 0) continue
    if (todayNepers[k]! >= 0) todayWorks++
    if (worstNepers[k]! >= 0) worstWorks++
  }
  const isNearer = Math.abs(todayWorks - samples / 2) < Math.abs(worstWorks - samples / 2)
  return {
    samples,
    today: wilson(todayWorks, samples),
    worst: wilson(worstWorks, samples),
    tips: tipsOf(figures, drawn, isNearer ? todayNepers : worstNepers),
  }
}

/**
 * Whether at least a share of the circuits that `oddsOf` draws works in the worst corner: the same circuits, judged the same, but no
 * further than until that is settled.
 */
export function worksAtWorst(
  model: CircuitModel,
  today: Conditions,
  wanted: { readonly samples: number; readonly seed: number; readonly share: number },
): boolean {
  const { samples, seed, share } = wanted
  const { figures, draw } = drawnModel(model)
  const printed = completenessOf(model, today).missing
  const worst = worstCorner(model, today, printed).conditions
  const normal = seededNormal(seed)
  const least = Math.ceil(share * samples)
  let works = 0
  for (let k = 0; k < samples && works < least; k++) {
    if (works + samples - k < least) return false
    const sample = draw(Float64Array.from(figures, () => normal()))
    const lacks = missingVaries(model) ? completenessOf(sample, today).missing : printed
    if (lacks.length === 0 && nepersOf(sample, worst) >= 0) works++
  }
  return works >= least
}

/** Whether something is missing can hang on figures only where a lamp must light or a bell may look lifted. */
function missingVaries({ supply }: CircuitModel): boolean {
  return Boolean(supply?.supply.indicator) || supply?.supply.offHookMA !== undefined
}

/** What the tightest check has to spare, nepers; what is not a number has nothing. */
function nepersOf(model: CircuitModel, conditions: Conditions): number {
  const { nepers } = leastUnder(model, conditions)
  return nepers >= 0 ? Math.min(nepers, MOST_NEPERS) : Math.max(nepers, -MOST_NEPERS)
}

/**
 * 95 % interval of a share. Source: E. B. Wilson, "Probable inference, the law of succession, and statistical inference", J. Amer.
 * Statist. Assoc. 22 (1927), 209 (from memory).
 */
export function wilson(works: number, samples: number): Share {
  const z = 1.959964
  const p = works / samples
  const middle = p + (z * z) / (2 * samples)
  const half = z * Math.sqrt((p * (1 - p)) / samples + (z * z) / (4 * samples * samples))
  const whole = 1 + (z * z) / samples
  const low = works === 0 ? 0 : (middle - half) / whole
  const high = works === samples ? 1 : (middle + half) / whole
  return { works: p, low, high }
}

function tipsOf(
  figures: readonly DrawnFigure[],
  drawn: readonly Float64Array[],
  outcome: Float64Array,
): Tip[] {
  return figures
    .map(({ what, entry, at }, k): Tip => {
      const share = correlationRatio(drawn[k]!, outcome)
      return { what, entry, ...(at !== null && { at }), share }
    })
    .filter(({ share }) => share >= LEAST_SHARE)
    .sort((a, b) => b.share - a.share)
    .slice(0, LISTED)
}

/** η² of an outcome over classes of a figure that hold equally many samples, corrected as R² is for its degrees of freedom. */
function correlationRatio(figure: Float64Array, outcome: Float64Array): number {
  const n = figure.length
  const classes = Math.max(2, Math.min(20, Math.floor(n / 20)))
  if (n < 2 * classes) return 0
  const order = Uint32Array.from({ length: n }, (_, k) => k).sort((a, b) => figure[a]! - figure[b]!)
  const mean = outcome.reduce((sum, each) => sum + each, 0) / n
  let total = 0
  for (const each of outcome) total += (each - mean) ** 2
  if (!(total > 1e-12 * n)) return 0
  let within = 0
  for (let c = 0; c < classes; c++) {
    const own = order.subarray(Math.floor((c * n) / classes), Math.floor(((c + 1) * n) / classes))
    let sum = 0
    for (const k of own) sum += outcome[k]!
    const middle = sum / own.length
    for (const k of own) within += (outcome[k]! - middle) ** 2
  }
  return Math.max(0, 1 - (within * (n - 1)) / (total * (n - classes)))
}
