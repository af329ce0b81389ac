import type { CircuitModel } from '../budget/circuit-model'
import { figuresOf } from '../field/wire-figures'
import type { Plan } from '../plan/plan'
import type { Known } from './evidence'
import { hypothesesFor } from './hypotheses'
import { type LikelyStretch, likelyPlaces, middleOf, narrowestBand } from './likely-stretches'
import { type NextStep, nextSteps } from './next-step'
import type { Bench } from './observation'
import { observed } from './observed'
import { posteriorOf } from './posterior'
import { type Shaded, shaded } from './shade'
import { FAULT_KINDS, type FaultKind, type Hypothesis } from './trouble'
import { waysOf } from './ways'

/** What is known of a fault: of what kind, where, and what would tell more. */
export interface FaultFound {
  /** The likeliest first; their chances are 1 together. */
  readonly kinds: readonly { readonly kind: FaultKind; readonly chance: number }[]
  /** Of the leaks, the part of which one wire lies on the earth. */
  readonly toEarth: number
  /** Chances that it is one wire alone; null where no wire was measured by itself. */
  readonly wires: { readonly a: number; readonly b: number } | null
  /** Chance that nothing is wrong, and that one fault does not explain it all. */
  readonly nothingWrong: number
  readonly several: number
  readonly places: readonly (LikelyStretch & { readonly middleM: number })[]
  readonly band: LikelyStretch | null
  /** How likely it is along every line, to be drawn. */
  readonly shade: readonly Shaded[]
  readonly next: readonly NextStep[]
  /** Which of the evidence tells nothing: nothing there would ring or give such a reading. */
  readonly unused: readonly number[]
}

/**
 * Finds a fault in a circuit from all that is known.
 *
 * @param model the network of the circuit with the wire that really lies there
 * @param tags places on its lines where a pair can be opened
 * @param beside lines on which each other circuit lies in the same cable or beside it
 */
export function locateFault(
  plan: Pick<Plan, 'weather' | 'wireTempC'>,
  model: CircuitModel,
  evidence: readonly Known[],
  tags: readonly { readonly line: string; readonly wireM: number }[] = [],
  beside: Bench['beside'] = new Map(),
): FaultFound {
  const figures = figuresOf(model.lines.map(({ wire }) => wire)).filter(({ sigma }) => sigma > 0)
  const hypotheses = hypothesesFor(evidence)
  const nepers = new Float64Array(figures.length)
  const bench: Bench = { plan, model, figures, nepers, hypotheses, beside }
  const found = posteriorOf(bench, evidence)
  const { cells, chances } = found
  const chanceOf = (is: (each: Hypothesis) => boolean) =>
    hypotheses.reduce((sum, each, h) => (is(each) ? sum + chances[h]! : sum), 0)
  const kinds = [...new Set([...FAULT_KINDS, ...hypotheses.map(({ kind }) => kind)])]
  const places = likelyPlaces(cells)
  return {
    kinds: kinds
      .map((kind) => ({ kind, chance: chanceOf((each) => each.kind === kind) }))
      .sort((a, b) => b.chance - a.chance),
    toEarth: chanceOf(({ toEarth }) => toEarth),
    wires: hypotheses.some(({ wire }) => wire)
      ? { a: chanceOf(({ wire }) => wire === 'a'), b: chanceOf(({ wire }) => wire === 'b') }
      : null,
    nothingWrong: found.nothingWrong,
    several: found.several,
    places: places.map((place) => ({ ...place, middleM: middleOf(cells, place) })),
    band: narrowestBand(cells),
    shade: shaded(cells),
    next: nextSteps(bench, evidence, found.particles, tags, places),
    unused: evidence.flatMap((each, k) => (tells(bench, each) ? [] : [k])),
  }
}

function tells(bench: Bench, each: Known): boolean {
  const { observations, witnesses } = observed(bench, [each], waysOf(bench, [each])[0]!)
  return observations.length + witnesses.length > 0
}
