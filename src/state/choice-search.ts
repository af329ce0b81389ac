import { effect, type Signal } from '@preact/signals'
import type { Choice } from '../budget/choices'
import type { ChoicePart } from '../jobs/circuit-answers'
import { circuitJobs } from '../jobs/circuit-jobs'
import { whenStill } from '../jobs/when-still'
import { measurePlan } from '../measure/measure-line'
import type { CircuitId } from '../plan/id'
import type { Store } from './store'

/** What each choice would give one circuit, as far as it is known. */
export interface CircuitChoices {
  /** The longest way between two sets; null where there are no two. */
  readonly way: { readonly from: string; readonly to: string; readonly wireM: number } | null
  readonly wires: readonly Choice[]
  readonly supplies: readonly Choice[]
  /** Why no more will come; empty while nothing is amiss. */
  readonly failure: string
}

export const NO_CHOICES: CircuitChoices = { way: null, wires: [], supplies: [], failure: '' }

/** Keeps a signal filled with what each choice would give a circuit, whenever the plan has settled. Returns the undoing of itself. */
export function searchChoices(store: Store, circuit: CircuitId, choices: Signal<CircuitChoices>): () => void {
  const jobs = circuitJobs('Weighing the choices')
  const stop = effect(() => {
    if (store.dragging.value) return undefined
    const plan = store.settled.value
    const ground = store.ground.value
    choices.value = NO_CHOICES
    return whenStill(async (signal) => {
      const question = { plan, measured: measurePlan(plan, ground), circuit }
      const result = await jobs.ask('choices', question, {
        signal,
        about: () => [store.settled.peek(), store.ground.peek()],
        onPart: (part) => {
          choices.value = withPart(choices.peek(), part)
        },
      })
      if (result && !result.ok) choices.value = { ...choices.peek(), failure: result.problems[0]!.message }
    })
  })
  return () => {
    stop()
    jobs.dispose()
  }
}

function withPart(known: CircuitChoices, part: ChoicePart): CircuitChoices {
  if (part.kind === 'longest-way') return { ...known, way: part.way }
  return part.of === 'wire'
    ? { ...known, wires: [...known.wires, part.choice] }
    : { ...known, supplies: [...known.supplies, part.choice] }
}
