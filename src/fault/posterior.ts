import type { Evidence } from './evidence'
import { HYPOTHESES } from './hypotheses'
import { lnSum, shares } from './log-sums'
import type { Bench } from './observation'
import { observed } from './observed'
import { type Particle, type Reckoner, reckonerOf, type Setup, type WorkCell } from './reckoner'
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
  /** Chance of each of {@link HYPOTHESES}, given that there is one fault. */
  readonly chances: readonly number[]
  readonly nothingWrong: number
  readonly several: number
  readonly particles: readonly Particle[]
}

/** A line is cut into so many stretches to begin with, of many lines each into fewer, of no less than so many metres. */
const FIRST_CELLS = 16
const FIRST_CELLS_OF_ALL = 240
const FEWEST_CELLS = 3
const LEAST_FIRST_M = 15

/** A stretch with more than this part of all chances is cut in two, unless it is so short. */
const SPLIT_ABOVE = 0.012
const LEAST_CELL_M = 0.5
const ROUNDS = 14

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
  const firstCount = Math.max(FEWEST_CELLS, Math.min(FIRST_CELLS, FIRST_CELLS_OF_ALL / lines.length))
  let cells = lines.flatMap(({ id, wireM }) => firstCells(id, wireM, firstCount, cuts, reckoner))
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

function firstCells(
  line: string,
  wireM: number,
  cellCount: number,
  cuts: readonly { readonly line: string; readonly wireM: number }[],
  { edge, cell }: Reckoner,
): readonly WorkCell[] {
  const inside = cuts.flatMap((cut) =>
    cut.line === line && cut.wireM > 0 && cut.wireM < wireM ? [cut.wireM] : [],
  )
  const ends = [0, ...new Set(inside.sort((a, b) => a - b)), wireM]
  return ends.slice(1).flatMap((toM, k) => {
    const fromM = ends[k]!
    const longM = Math.max(wireM / cellCount, LEAST_FIRST_M)
    const count = Math.max(1, Math.ceil((toM - fromM) / longM))
    const middle = (fromM + toM) / 2
    const edges = Array.from({ length: count + 1 }, (_, i) =>
      edge(line, fromM + ((toM - fromM) * i) / count, middle),
    )
    return edges.slice(1).map((to, i) => cell(line, edges[i]!, to))
  })
}
