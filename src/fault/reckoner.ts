import { seeded, seededNormal } from '../budget/seeded'
import { STEP_NEPERS } from '../field/gauge'
import { cholesky, solveLower } from '../field/linear-fit'
import { HYPOTHESES, type Hypothesis, NOTHING_WRONG, SEVERAL } from './hypotheses'
import { dot, LN_2PI, lnAverage, lnSum, shares, solveUpper } from './log-sums'
import { type Bench, type Manner, type Observation, tempNepers, type Witness } from './observation'
import type { Way } from './ways'

/** Slopes and witnesses change slowly with a fault's ohms: they are reckoned at every so many of them. */
const COARSE = 4

/** A reading that no single fault would bring about is as likely as any other in so many nepers. */
const ANY_NEPERS = 12
/** A bridge that balances where it should not. */
const LN_BALANCED_BY_CHANCE = -5

const PARTICLES = 120

/** One fault that would explain what is known, drawn as likely as it is. */
export interface Particle {
  readonly line: string
  readonly wireM: number
  readonly hypothesis: Hypothesis
  readonly ohms: number
  readonly manner: Manner
  /** By how much each figure of the wire is then more than it is taken to be, nepers. */
  readonly nepers: Float64Array
}

/** One way of taking the evidence, with all that is held against it. */
export interface Setup {
  readonly way: Way
  readonly observations: readonly Observation[]
  readonly witnesses: readonly Witness[]
}

/** What would be read with the fault at one place, by setup and hypothesis. */
interface Edge {
  readonly wireM: number
  readonly seen: readonly (readonly Glimpse[])[]
}

interface Glimpse {
  /** Which observations bear such a fault. */
  readonly borne: readonly number[]
  /** By ohms, then by observation: what is read. */
  readonly values: Float64Array
  /** By every fourth of the ohms, by observation, then by figure: slopes. */
  readonly slopes: Float64Array
  /** By every fourth of the ohms: logarithm of the chance of the witnesses. */
  readonly witnessed: Float64Array
}

export interface WorkCell {
  readonly line: string
  readonly from: Edge
  readonly to: Edge
  /** Logarithm of its chance, not yet against all others, by setup and hypothesis. */
  readonly ln: readonly Float64Array[]
}

const coarseCount = (count: number) => Math.floor((count - 1) / COARSE) + 2

export type Reckoner = ReturnType<typeof reckonerOf>

/** Reckons stretches, halves them, and draws faults from them. */
export function reckonerOf({ figures, model }: Bench, setups: readonly Setup[]) {
  const alpha = figures.map(({ wire, member }) =>
    member === 'loopOhmPerKm'
      ? tempNepers(model.lines.find((line) => line.wire.id === wire)?.wire.tempCoeffPerC ?? 0)
      : 0,
  )
  const doubts = figures.length + 1

  const glimpse = (
    { observations, witnesses }: Setup,
    hypothesis: Hypothesis,
    line: string,
    wireM: number,
    side: number,
  ): Glimpse => {
    const { lnOhms } = hypothesis
    const borne = observations.flatMap((each, k) => (each.bears(hypothesis) ? [k] : []))
    const n = borne.length
    const values = new Float64Array(lnOhms.length * n)
    const coarse = coarseCount(lnOhms.length)
    const slopes = new Float64Array(coarse * n * figures.length)
    const witnessed = new Float64Array(coarse)
    for (const [row, k] of borne.entries()) {
      const seen = observations[k]!.at(line, wireM, side)
      for (const [u, lnOhm] of lnOhms.entries()) values[u * n + row] = seen.first(hypothesis, Math.exp(lnOhm))
      if (figures.length === 0) continue
      for (let c = 0; c < coarse; c++) {
        const u = Math.min(c * COARSE, lnOhms.length - 1)
        const all = seen.all(hypothesis, Math.exp(lnOhms[u]!))
        for (let f = 0; f < figures.length; f++)
          slopes[(c * n + row) * figures.length + f] = (all[f + 1]! - all[0]!) / STEP_NEPERS
      }
    }
    for (const witness of witnesses) {
      const told = witness.at(line, wireM, side)
      for (let c = 0; c < coarse; c++) {
        const u = Math.min(c * COARSE, lnOhms.length - 1)
        witnessed[c]! += told(hypothesis, Math.exp(lnOhms[u]!))
      }
    }
    return { borne, values, slopes, witnessed }
  }

  const edge = (line: string, wireM: number, side: number): Edge => ({
    wireM,
    seen: setups.map((setup) =>
      HYPOTHESES.map((hypothesis) => glimpse(setup, hypothesis, line, wireM, side)),
    ),
  })

  /** Doubts of the observations, a row each: slopes of each figure by its standard deviation, and of the temperature. */
  const doubtRows = (
    observations: readonly Observation[],
    borne: readonly number[],
    slopeOf: (row: number, figure: number) => number,
    out: Float64Array,
  ): void => {
    for (const [row, k] of borne.entries()) {
      let byTemp = 0
      for (const [f, { sigma }] of figures.entries()) {
        const slope = slopeOf(row, f)
        out[row * doubts + f] = slope * sigma
        byTemp += slope * alpha[f]!
      }
      out[row * doubts + figures.length] = observations[k]!.untaken ? byTemp : 0
    }
  }

  /** Logarithm of the chance of what was read, by stretch of a fault's ohms, on a stretch of a line. */
  const lnByOhms = (
    { observations }: Setup,
    { lnOhms, chances }: Hypothesis,
    from: Glimpse,
    to: Glimpse,
    out: Float64Array,
    keep?: (
      u: number,
      lower: Float64Array,
      rows: Float64Array,
      start: Float64Array,
      change: Float64Array,
    ) => void,
  ): Float64Array => {
    const { borne } = from
    const n = borne.length
    const missed = LN_BALANCED_BY_CHANCE * (observations.length - n)
    const rows = new Float64Array(n * doubts)
    const lower = new Float64Array(n * n)
    const [start, change, along] = [new Float64Array(n), new Float64Array(n), new Float64Array(n)]
    for (let u = 0; u < chances.length; u++) {
      const next = Math.min(u + 1, lnOhms.length - 1)
      const c = Math.floor(u / COARSE)
      const past = (u - c * COARSE + 0.5) / COARSE
      const near = c * n * figures.length
      const far = (lnOhms.length === 1 ? c : c + 1) * n * figures.length
      doubtRows(
        observations,
        borne,
        (row, f) => {
          const at = row * figures.length + f
          const here = (from.slopes[near + at]! + to.slopes[near + at]!) / 2
          const there = (from.slopes[far + at]! + to.slopes[far + at]!) / 2
          return here + (there - here) * past
        },
        rows,
      )
      for (let row = 0; row < n; row++) {
        const { read } = observations[borne[row]!]!
        const first = (from.values[u * n + row]! + to.values[u * n + row]!) / 2
        const last = (from.values[next * n + row]! + to.values[next * n + row]!) / 2
        start[row] = read - first
        change[row] = first - last
        along[row] =
          (to.values[u * n + row]! -
            from.values[u * n + row]! +
            to.values[next * n + row]! -
            from.values[next * n + row]!) /
          2
      }
      for (let a = 0; a < n; a++) {
        for (let b = 0; b <= a; b++) {
          // A stretch is as good as its middle with an error of its length over √12.
          let sum = (along[a]! * along[b]!) / 12
          for (let f = 0; f < doubts; f++) sum += rows[a * doubts + f]! * rows[b * doubts + f]!
          lower[a * n + b] = a === b ? sum + observations[borne[a]!]!.sigma ** 2 : sum
        }
      }
      cholesky(lower, n)
      keep?.(u, lower, rows, start, change)
      let lnRoot = 0
      for (let a = 0; a < n; a++) lnRoot += Math.log(lower[a * n + a]!)
      solveLower(lower, n, start)
      solveLower(lower, n, change)
      const lnWitness =
        (from.witnessed[c]! + to.witnessed[c]!) / 2 +
        (lnOhms.length === 1
          ? 0
          : ((from.witnessed[c + 1]! + to.witnessed[c + 1]! - from.witnessed[c]! - to.witnessed[c]!) / 2) *
            past)
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

  const cell = (line: string, from: Edge, to: Edge): WorkCell => ({
    line,
    from,
    to,
    ln: setups.map((setup, s) =>
      Float64Array.from(HYPOTHESES, (hypothesis, h) => {
        const own = new Float64Array(hypothesis.chances.length)
        const ln = lnSum(lnByOhms(setup, hypothesis, from.seen[s]![h]!, to.seen[s]![h]!, own))
        return ln + Math.log(hypothesis.chance * setup.way.chance)
      }),
    ),
  })

  const halves = ({ line, from, to }: WorkCell): readonly WorkCell[] => {
    const middleM = (from.wireM + to.wireM) / 2
    const middle = edge(line, middleM, middleM)
    return [cell(line, from, middle), cell(line, middle, to)]
  }

  /** Chances that nothing is wrong, and that more than one thing is, as they stand beside the single faults'. */
  const others = () => {
    const nothing = setups.map((setup) => {
      const { observations, witnesses, way } = setup
      const n = observations.length
      const start = Float64Array.from(observations, (each) => each.read - each.sound()[0]!)
      const rows = new Float64Array(n * doubts)
      doubtRows(
        observations,
        [...observations.keys()],
        (row, f) => {
          const all = observations[row]!.sound()
          return (all[f + 1]! - all[0]!) / STEP_NEPERS
        },
        rows,
      )
      const lower = new Float64Array(n * n)
      for (let a = 0; a < n; a++) {
        for (let b = 0; b <= a; b++) {
          let sum = a === b ? observations[a]!.sigma ** 2 : 0
          for (let f = 0; f < doubts; f++) sum += rows[a * doubts + f]! * rows[b * doubts + f]!
          lower[a * n + b] = sum
        }
      }
      cholesky(lower, n)
      let lnRoot = 0
      for (let a = 0; a < n; a++) lnRoot += Math.log(lower[a * n + a]!)
      solveLower(lower, n, start)
      const bridged = observations.filter((each) => !each.bears({ element: 'none', toEarth: false })).length
      const told = witnesses.reduce((sum, witness) => sum + witness.sound(), 0)
      const ln = told + bridged * LN_BALANCED_BY_CHANCE - lnRoot - (n / 2) * LN_2PI - dot(start, start) / 2
      return ln + Math.log(NOTHING_WRONG * way.chance)
    })
    const { observations, witnesses } = setups[0]!
    const several =
      Math.log(SEVERAL) - observations.length * Math.log(ANY_NEPERS) - witnesses.length * Math.LN2
    return { nothing: lnSum(nothing), several }
  }

  /** Draws faults as likely as they are. */
  const draw = (
    cells: readonly WorkCell[],
    masses: readonly (readonly Float64Array[])[],
    total: number,
    seed: number,
  ): readonly Particle[] => {
    const random = seeded(seed)
    const normal = seededNormal(seed + 1)
    const particles: Particle[] = []
    // Evenly spaced draws leave less to chance than single ones.
    let [next, run] = [((random() + 0) * total) / PARTICLES, 0]
    for (const [k, { line, from, to }] of cells.entries()) {
      for (const [s, own] of masses[k]!.entries()) {
        for (const [h, mass] of own.entries()) {
          for (run += mass; next < run; next += total / PARTICLES) {
            const drawn = drawFrom(
              setups[s]!,
              HYPOTHESES[h]!,
              from.seen[s]![h]!,
              to.seen[s]![h]!,
              random,
              normal,
            )
            const wireM = from.wireM + random() * (to.wireM - from.wireM)
            particles.push({ line, wireM, hypothesis: HYPOTHESES[h]!, manner: setups[s]!.way, ...drawn })
          }
        }
      }
    }
    return particles
  }

  const drawFrom = (
    setup: Setup,
    hypothesis: Hypothesis,
    from: Glimpse,
    to: Glimpse,
    random: () => number,
    normal: () => number,
  ): Pick<Particle, 'ohms' | 'nepers'> => {
    const n = from.borne.length
    const kept: Float64Array[] = []
    const ln = lnByOhms(
      setup,
      hypothesis,
      from,
      to,
      new Float64Array(hypothesis.chances.length),
      (_, lower, rows, start, change) => {
        // What is left of the readings goes to the figures in doubt: Jᵀ S⁻¹ r, with the reading in the middle of the stretch.
        const rest = start.map((each, a) => each + change[a]! / 2)
        const solved = solveUpper(lower, n, solveLower(lower, n, rest))
        kept.push(
          Float64Array.from({ length: doubts }, (_, f) => {
            let sum = 0
            for (let a = 0; a < n; a++) sum += rows[a * doubts + f]! * solved[a]!
            return sum
          }),
        )
      },
    )
    const weights = shares([...ln])
    let left = random()
    let u = 0
    while (u < weights.length - 1 && left > weights[u]!) left -= weights[u++]!
    const { lnOhms } = hypothesis
    const next = Math.min(u + 1, lnOhms.length - 1)
    const ohms = Math.exp(lnOhms[u]! + (lnOhms[next]! - lnOhms[u]!) * random())
    const nepers = Float64Array.from(
      figures,
      ({ sigma }, f) => sigma * ((kept[u]?.[f] ?? 0) + 0.3 * normal()),
    )
    return { ohms, nepers }
  }

  return { edge, cell, halves, others, draw }
}
