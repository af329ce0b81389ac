import type { Evidence } from './evidence'
import type { Setup, Spot } from './glimpse'
import { HYPOTHESES } from './hypotheses'
import { lnSum, shares } from './log-sums'
import { lnNothingWrong, lnSeveral } from './no-single-fault'
import type { Bench } from './observation'
import { observed } from './observed'
import { drawn, type Particle } from './particles'
import { type Reckoner, reckonerOf, type WorkCell } from './reckoner'
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
const FIRST_CELLS = 10
const FIRST_CELLS_OF_ALL = 160
const FEWEST_CELLS = 3
const LEAST_FIRST_M = 15

/** A stretch with more than this part of all chances is cut in two, unless it is so short. */
const SPLIT_ABOVE = 0.012
const LEAST_CELL_M = 0.5
const ROUNDS = 14

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
export function posteriorOf(bench: Bench, evidence: readonly Evidence[]): Posterior {
  const cuts = evidence.flatMap((each) => ('line' in each ? [{ line: each.line, wireM: each.wireM }] : []))
  const first = reckoned(bench, evidence, firstCuts(bench, cuts))
  const { particles } = first.posterior
  const nepers = bench.figures.map(
    (_, f) => particles.reduce((sum, each) => sum + each.nepers[f]!, 0) / particles.length,
  )
  if (nepers.every((each) => Math.abs(each) < FAR_NEPERS)) return first.posterior
  return reckoned({ ...bench, nepers }, evidence, first.cuts).posterior
}

/** Places along each line that part it into stretches, m. */
type Cuts = ReadonlyMap<string, readonly number[]>

function reckoned(
  bench: Bench,
  evidence: readonly Evidence[],
  cuts: Cuts,
): { readonly posterior: Posterior; readonly cuts: Cuts } {
  const setups = waysOf(bench, evidence).map((way): Setup => ({ way, ...observed(bench, evidence, way) }))
  const reckoner = reckonerOf(bench, setups)
  const stood = (line: string) =>
    new Set(evidence.flatMap((each) => ('line' in each && each.line === line ? [each.wireM] : [])))
  let cells = [...cuts].flatMap(([line, places]) => cellsBetween(line, places, stood(line), reckoner))
  const totalM = cells.reduce((sum, { from, to }) => sum + to.wireM - from.wireM, 0)
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
  const [nothing, several] = [lnNothingWrong(bench, setups), lnSeveral(setups)]
  const whole = lnSum([Math.log(total) + scale, nothing, several])
  const chances = HYPOTHESES.map(
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
  const found = new Map<string, number[]>()
  for (const { line, from, to } of cells) {
    const before = found.get(line) ?? [from.wireM]
    found.set(line, [...before, to.wireM])
  }
  return { posterior, cuts: found }
}

/** Every line in stretches of the same length between the places where an instrument stood. */
function firstCuts(
  { model }: Bench,
  stood: readonly { readonly line: string; readonly wireM: number }[],
): Cuts {
  const lines = new Map(model.lines.flatMap(({ id, wireM }) => (wireM > 0 ? [[id, wireM] as const] : [])))
  const count = Math.max(FEWEST_CELLS, Math.min(FIRST_CELLS, FIRST_CELLS_OF_ALL / lines.size))
  return new Map(
    [...lines].map(([id, wireM]) => {
      const inside = stood.flatMap((cut) =>
        cut.line === id && cut.wireM > 0 && cut.wireM < wireM ? [cut.wireM] : [],
      )
      const ends = [0, ...new Set(inside.sort((a, b) => a - b)), wireM]
      const longM = Math.max(wireM / count, LEAST_FIRST_M)
      const places = ends.slice(1).flatMap((toM, k) => {
        const fromM = ends[k]!
        const pieces = Math.max(1, Math.ceil((toM - fromM) / longM))
        return Array.from({ length: pieces }, (_, i) => fromM + ((toM - fromM) * (i + 1)) / pieces)
      })
      return [id, [0, ...places]]
    }),
  )
}

function cellsBetween(
  line: string,
  places: readonly number[],
  stood: ReadonlySet<number>,
  { spot, cell }: Reckoner,
): readonly WorkCell[] {
  let last: Spot | undefined
  return places.slice(1).map((toM, k) => {
    const fromM = places[k]!
    const middleM = (fromM + toM) / 2
    // Where a meter stood the line is cut, and what is seen hangs on the side.
    const from = last && !stood.has(fromM) ? last : spot(line, fromM, middleM)
    last = spot(line, toM, middleM)
    return cell(line, from, last)
  })
}
