import type { Known } from './evidence'
import type { Setup, Spot } from './glimpse'
import { lnSum, shares } from './log-sums'
import { lnNothingWrong, lnSeveral } from './no-single-fault'
import type { Bench } from './observation'
import { observed } from './observed'
import { drawn, type Particle } from './particles'
import { type Before, type Reckoner, reckonerOf, type WorkCell } from './reckoner'
import { waysOf } from './ways'

/** A stretch of a line, and the chance that the fault lies there. */
export interface Cell {
  readonly line: string
  readonly fromM: number
  readonly toM: number
  readonly chance: number
}

export interface Posterior {
  /** Stretches that do not meet, in the order of the circuit's lines; their chances are 1 together. */
  readonly cells: readonly Cell[]
  /** Chance of each of the bench's hypotheses, given that there is one fault. */
  readonly chances: readonly number[]
  readonly nothingWrong: number
  readonly several: number
  readonly particles: readonly Particle[]
}

/** A line is cut into so many stretches to begin with, of many lines each into fewer, of no less than so many metres. */
const FIRST_CELLS = 10
const FIRST_CELLS_OF_ALL = 160
const FEWEST_CELLS = 3
const LEAST_FIRST_M = 15

/** A stretch with more than this part of all chances is cut in two, unless it is so short. */
const SPLIT_ABOVE = 0.012
const LEAST_CELL_M = 0.5
const ROUNDS = 14

/** A kind of fault whose part of all chances on a stretch is below this, by its logarithm, is not reckoned there any finer. */
const LN_OUT_OF_QUESTION = -16

/** A figure that the readings put so far from the catalog's, nepers, is tried there: over so much nothing follows in proportion. */
const FAR_NEPERS = 0.08

/**
 * Where the fault lies, of what kind it is, and what else there may be.
 *
 * Every place along every line is tried with every kind of fault and every resistance it may have. What is read follows from the
 * network; lot of wire, temperature and meter are integrated out, since in nepers readings follow in proportion from them; a fault's own
 * ohms are integrated piece by piece. Stretches with much of the chance are cut finer until none has more than a hundredth. Where the
 * readings put the wire's figures far from the catalog's, all is reckoned anew in proportion from there: Laplace's way.
 */
export function posteriorOf(bench: Bench, evidence: readonly Known[]): Posterior {
  const cuts = evidence.flatMap((each) => ('line' in each ? [{ line: each.line, wireM: each.wireM }] : []))
  const first = reckoned(bench, evidence, firstStretches(bench, cuts))
  const { particles } = first.posterior
  const nepers = bench.figures.map(
    (_, f) => particles.reduce((sum, each) => sum + each.nepers[f]!, 0) / particles.length,
  )
  if (nepers.every((each) => Math.abs(each) < FAR_NEPERS)) return first.posterior
  return reckoned({ ...bench, nepers }, evidence, first.cells).posterior
}

/** A stretch to be reckoned, and what is known of it before. */
interface Outline {
  readonly line: string
  readonly from: { readonly wireM: number }
  readonly to: { readonly wireM: number }
  readonly known?: Before
}

function reckoned(
  bench: Bench,
  evidence: readonly Known[],
  outlines: readonly Outline[],
): { readonly posterior: Posterior; readonly cells: readonly Outline[] } {
  const setups = waysOf(bench, evidence).map((way): Setup => ({ way, ...observed(bench, evidence, way) }))
  const reckoner = reckonerOf(bench, setups)
  const stood = new Set(evidence.flatMap((each) => ('line' in each ? [`${each.wireM} ${each.line}`] : [])))
  let cells = cellsOf(outlines, stood, reckoner)
  const totalM = cells.reduce((sum, { from, to }) => sum + to.wireM - from.wireM, 0)
  const lnChance = ({ from, to }: WorkCell) => Math.log((to.wireM - from.wireM) / totalM)

  for (let round = 0; round < ROUNDS; round++) {
    const lns = cells.map((cell) => lnSum(cell.ln.flatMap((each) => [...each])) + lnChance(cell))
    const weights = shares(lns)
    const least = lnSum(lns) + LN_OUT_OF_QUESTION
    const split = new Set(
      cells.filter(
        ({ from, to }, k) => weights[k]! > SPLIT_ABOVE && to.wireM - from.wireM > 2 * LEAST_CELL_M,
      ),
    )
    if (split.size === 0) break
    cells = cells.flatMap((cell) =>
      split.has(cell) ? reckoner.halves(cell, least - lnChance(cell)) : [cell],
    )
  }

  const weights = cells.map((cell) => cell.ln.map((each) => each.map((ln) => ln + lnChance(cell))))
  const most = Math.max(...weights.flatMap((each) => each.flatMap((own) => [...own])))
  const scale = Number.isFinite(most) ? most : 0
  const masses = weights.map((each) => each.map((own) => own.map((ln) => Math.exp(ln - scale))))
  const massOf = (each: readonly Float64Array[]) =>
    each.reduce((sum, own) => sum + own.reduce((total, mass) => total + mass, 0), 0)
  const total = masses.reduce((sum, each) => sum + massOf(each), 0)
  const [nothing, several] = [lnNothingWrong(bench, setups), lnSeveral(setups)]
  const whole = lnSum([Math.log(total) + scale, nothing, several])
  const chances = bench.hypotheses.map(
    (_, h) => masses.reduce((sum, each) => sum + each.reduce((own, at) => own + at[h]!, 0), 0) / total,
  )
  const posterior = {
    cells: cells.map(({ line, from, to }, k) => ({
      line,
      fromM: from.wireM,
      toM: to.wireM,
      chance: massOf(masses[k]!) / total,
    })),
    chances,
    nothingWrong: Math.exp(nothing - whole),
    several: Math.exp(several - whole),
    particles: drawn(bench, setups, reckoner, cells, masses),
  }
  const least = whole + LN_OUT_OF_QUESTION
  return {
    posterior,
    cells: cells.map((cell) => ({ ...cell, known: { ln: cell.ln, leastLn: least - lnChance(cell) } })),
  }
}

/** Every line in stretches of the same length between the places where an instrument stood. */
function firstStretches(
  { model }: Bench,
  stood: readonly { readonly line: string; readonly wireM: number }[],
): readonly Outline[] {
  const lines = new Map(model.lines.flatMap(({ id, wireM }) => (wireM > 0 ? [[id, wireM] as const] : [])))
  const count = Math.max(FEWEST_CELLS, Math.min(FIRST_CELLS, FIRST_CELLS_OF_ALL / lines.size))
  return [...lines].flatMap(([line, wireM]) => {
    const inside = stood.flatMap((cut) =>
      cut.line === line && cut.wireM > 0 && cut.wireM < wireM ? [cut.wireM] : [],
    )
    const ends = [0, ...new Set(inside.sort((a, b) => a - b)), wireM]
    const longM = Math.max(wireM / count, LEAST_FIRST_M)
    return ends.slice(1).flatMap((toM, k) => {
      const fromM = ends[k]!
      const pieces = Math.max(1, Math.ceil((toM - fromM) / longM))
      const at = (i: number) => ({ wireM: i === pieces ? toM : fromM + ((toM - fromM) * i) / pieces })
      return Array.from({ length: pieces }, (_, i) => ({ line, from: at(i), to: at(i + 1) }))
    })
  })
}

/** @param stood places where a meter stood: the line is cut there, and what is seen hangs on the side */
function cellsOf(
  outlines: readonly Outline[],
  stood: ReadonlySet<string>,
  { spot, cell }: Reckoner,
): readonly WorkCell[] {
  let last: { readonly line: string; readonly spot: Spot } | undefined
  return outlines.map(({ line, from, to, known }) => {
    const middleM = (from.wireM + to.wireM) / 2
    const isShared =
      last?.line === line && last.spot.wireM === from.wireM && !stood.has(`${from.wireM} ${line}`)
    const start = isShared ? last!.spot : spot(line, from.wireM, middleM)
    last = { line, spot: spot(line, to.wireM, middleM) }
    return cell(line, start, last.spot, known)
  })
}
