import type { CircuitModel } from '../budget/circuit-model'
import { figuresOf } from '../field/wire-figures'
import type { Plan } from '../plan/plan'
import type { Evidence } from './evidence'
import { FAULT_KINDS, type FaultKind, HYPOTHESES } from './hypotheses'
import { type LikelyStretch, likelyPlaces, middleOf, narrowestBand } from './likely-stretches'
import { type NextStep, nextSteps } from './next-step'
import type { Bench } from './observation'
import { posteriorOf } from './posterior'
import { type Shaded, shaded } from './shade'

/** What is known of a fault: of what kind, where, and what would tell more. */
export interface FaultFound {
  /** The likeliest first; their chances are 1 together. */
  readonly kinds: readonly { readonly kind: FaultKind; readonly chance: number }[]
  /** Of the leaks, the part of which one wire lies on the earth. */
  readonly toEarth: number
  /** Chance that nothing is wrong, and that one fault does not explain it all. */
  readonly nothingWrong: number
  readonly several: number
  readonly places: readonly (LikelyStretch & { readonly middleM: number })[]
  readonly band: LikelyStretch | null
  /** How likely it is along every line, to be drawn. */
  readonly shade: readonly Shaded[]
  readonly next: readonly NextStep[]
}

/**
 * Finds a fault in a circuit from all that is known.
 *
 * @param model the network of the circuit with the wire that really lies there
 * @param tags places on its lines where a pair can be opened
 */
export function locateFault(
  plan: Pick<Plan, 'weather' | 'wireTempC'>,
  model: CircuitModel,
  evidence: readonly Evidence[],
  tags: readonly { readonly line: string; readonly wireM: number }[] = [],
): FaultFound {
  const figures = figuresOf(model.lines.map(({ wire }) => wire)).filter(({ sigma }) => sigma > 0)
  const bench: Bench = { plan, model, figures, nepers: new Float64Array(figures.length) }
  const found = posteriorOf(bench, evidence)
  const { cells, chances } = found
  const ofKind = (kind: FaultKind) =>
    HYPOTHESES.reduce((sum, each, h) => (each.kind === kind ? sum + chances[h]! : sum), 0)
  const places = likelyPlaces(cells)
  return {
    kinds: FAULT_KINDS.map((kind) => ({ kind, chance: ofKind(kind) })).sort((a, b) => b.chance - a.chance),
    toEarth: HYPOTHESES.reduce((sum, each, h) => (each.toEarth ? sum + chances[h]! : sum), 0),
    nothingWrong: found.nothingWrong,
    several: found.several,
    places: places.map((place) => ({ ...place, middleM: middleOf(cells, place) })),
    band: narrowestBand(cells),
    shade: shaded(cells),
    next: nextSteps(bench, evidence, found.particles, tags, places),
  }
}
