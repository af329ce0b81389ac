import { seeded, seededNormal } from '../budget/seeded'
import { STEP_NEPERS } from '../field/gauge'
import { cholesky, solveLower } from '../field/linear-fit'
import type { Evidence } from './evidence'
import { HYPOTHESES, type Hypothesis, NOTHING_WRONG, SEVERAL } from './hypotheses'
import {
  type Bench,
  erf,
  type Manner,
  type Observation,
  observed,
  tempNepers,
  type Witness,
} from './observation'

/** A stretch of a line, and the chance that the fault lies there. */
export interface Cell {
  readonly line: string
  readonly fromM: number
  readonly toM: number
  readonly chance: number
}

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

export interface Posterior {
  /** Stretches that do not meet, in the order of the circuit's lines; their chances are 1 together. */
  readonly cells: readonly Cell[]
  /** Chance of each of {@link HYPOTHESES}, given that there is one fault. */
  readonly chances: readonly number[]
  readonly nothingWrong: number
  readonly several: number
  readonly particles: readonly Particle[]
}

/** What is not known about how the evidence was taken, and how often it is so. Allowances. */
interface Way extends Manner {
  readonly chance: number
}

/** Slopes and witnesses change slowly with a fault's ohms: they are reckoned at every so many of them. */
const COARSE = 4

/** A line is cut into so many stretches to begin with, of no less than so many metres. */
const FIRST_CELLS = 16
const LEAST_FIRST_M = 15

/** A stretch with more than this part of all chances is cut in two, unless it is so short. */
const SPLIT_ABOVE = 0.012
const LEAST_CELL_M = 0.5
const ROUNDS = 14

/** A reading that no single fault would bring about is as likely as any other in so many nepers. */
const ANY_NEPERS = 12
/** A bridge that balances where it should not. */
const LN_BALANCED_BY_CHANCE = -5

const PARTICLES = 120

/** One way of taking the evidence, with all that is held against it. */
interface Setup {
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

interface WorkCell {
  readonly line: string
  readonly from: Edge
  readonly to: Edge
  /** Logarithm of its chance, not yet against all others, by setup and hypothesis. */
  readonly ln: readonly Float64Array[]
}

const coarseCount = (count: number) => Math.floor((count - 1) / COARSE) + 2

/**
 * Where the fault lies, of what kind it is, and what else there may be.
 *
 * Every place along every line is tried with every kind of fault and every resistance it may have. What is read follows from the
 * network; lot of wire, temperature and meter are integrated out, since in nepers readings follow in proportion from them; a fault's own
 * ohms are integrated piece by piece. Stretches with much of the chance are cut finer until none has more than a hundredth.
 */
export function posteriorOf(bench: Bench, evidence: readonly Evidence[], seed = 1): Posterior {
  const setups = waysOf(bench, evidence).map((way): Setup => ({ way, ...observed(bench, evidence, way) }))
  const reckoner = reckonerOf(bench, setups)
  const lines = bench.model.lines.filter(({ wireM }) => wireM > 0)
  const totalM = lines.reduce((sum, { wireM }) => sum + wireM, 0)
  const cuts = evidence.flatMap((each) => ('line' in each ? [{ line: each.line, wireM: each.wireM }] : []))
  let cells = lines.flatMap(({ id, wireM }) => firstCells(id, wireM, cuts, reckoner))
  const lnChance = ({ from, to }: WorkCell) => Math.log((to.wireM - from.wireM) / totalM)

  for (let round = 0; round < ROUNDS; round++) {
    const weights = shares(cells.map((cell) => lnSum(cell.ln.flatMap((each) => [...each])) + lnChance(cell)))
    const split = new Set(
      cells.filter(
        ({ from, to }, k) => weights[k]! > SPLIT_ABOVE && to.wireM - from.wireM > 2 * LEAST_CELL_M,
      ),
    )
    if (split.size === 0) break
    cells = cells.flatMap((cell) => (split.has(cell) ? reckoner.halves(cell) : [cell]))
  }

  const weights = cells.map((cell) => cell.ln.map((each) => each.map((ln) => ln + lnChance(cell))))
  const most = Math.max(...weights.flatMap((each) => each.flatMap((own) => [...own])))
  const scale = Number.isFinite(most) ? most : 0
  const masses = weights.map((each) => each.map((own) => own.map((ln) => Math.exp(ln - scale))))
  const massOf = (each: readonly Float64Array[]) =>
    each.reduce((sum, own) => sum + own.reduce((total, mass) => total + mass, 0), 0)
  const total = masses.reduce((sum, each) => sum + massOf(each), 0)
  const single = Math.log(total) + scale
  const others = reckoner.others()
  const whole = lnSum([single, others.nothing, others.several])
  const chances = HYPOTHESES.map(
    (_, h) => masses.reduce((sum, each) => sum + each.reduce((own, at) => own + at[h]!, 0), 0) / total,
  )
  return {
    cells: cells.map(({ line, from, to }, k) => ({
      line,
      fromM: from.wireM,
      toM: to.wireM,
      chance: massOf(masses[k]!) / total,
    })),
    chances,
    nothingWrong: Math.exp(others.nothing - whole),
    several: Math.exp(others.several - whole),
    particles: reckoner.draw(cells, masses, total, seed),
  }
}

/** Ways of taking the evidence that could make a difference. */
function waysOf({ model }: Bench, evidence: readonly Evidence[]): readonly Way[] {
  const readings = evidence.filter((each) => 'what' in each)
  const isUnsaid = readings.some((each) => each.weather === undefined && each.what !== 'loopOhms')
  const hasBranches = model.lines.length > 1 && readings.some(({ far }) => far !== 'set')
  const hasOtherSets = model.sets.length > 2 && readings.some(({ far }) => far !== 'set')
  const of = (chance: number, manner: Partial<Manner>): Way => ({
    branches: true,
    otherSets: false,
    otherWeather: false,
    ...manner,
    chance,
  })
  const ways = [
    of(0.75, {}),
    ...(hasBranches ? [of(0.15, { branches: false })] : []),
    ...(hasOtherSets ? [of(0.1, { otherSets: true })] : []),
  ]
  return isUnsaid
    ? ways.flatMap((way) => [way, { ...way, otherWeather: true, chance: way.chance * 0.1 }])
    : ways
}

function firstCells(
  line: string,
  wireM: number,
  cuts: readonly { readonly line: string; readonly wireM: number }[],
  { edge, cell }: Reckoner,
): readonly WorkCell[] {
  const inside = cuts.flatMap((cut) =>
    cut.line === line && cut.wireM > 0 && cut.wireM < wireM ? [cut.wireM] : [],
  )
  const ends = [0, ...new Set(inside.sort((a, b) => a - b)), wireM]
  return ends.slice(1).flatMap((toM, k) => {
    const fromM = ends[k]!
    const longM = Math.max(wireM / FIRST_CELLS, LEAST_FIRST_M)
    const count = Math.max(1, Math.ceil((toM - fromM) / longM))
    const middle = (fromM + toM) / 2
    const edges = Array.from({ length: count + 1 }, (_, i) =>
      edge(line, fromM + ((toM - fromM) * i) / count, middle),
    )
    return edges.slice(1).map((to, i) => cell(line, edges[i]!, to))
  })
}

type Reckoner = ReturnType<typeof reckonerOf>

function reckonerOf({ figures, model }: Bench, setups: readonly Setup[]) {
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

const LN_2PI = Math.log(2 * Math.PI)

const dot = (a: Float64Array, b: Float64Array): number => {
  let sum = 0
  for (let k = 0; k < a.length; k++) sum += a[k]! * b[k]!
  return sum
}

function solveUpper(lower: Float64Array, n: number, b: Float64Array): Float64Array {
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

const shares = (ln: readonly number[]): readonly number[] => {
  const whole = lnSum(ln)
  return ln.map((each) => Math.exp(each - whole))
}

/** Logarithm of the average over t from 0 to 1 of exp(−(a t² + 2 b t + c) / 2), by the error function. */
function lnAverage(a: number, b: number, c: number): number {
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
