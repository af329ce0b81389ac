import { effect, type Signal } from '@preact/signals'
import type { Choice } from '../budget/choices'
import { askWhenStill } from '../jobs/ask-circuits'
import type { CircuitAnswer } from '../jobs/circuit-questions'
import { measurePlan } from '../measure/measure-line'
import type { CircuitId } from '../plan/id'
import type { Store } from './store'

/** What each choice would give one circuit, as far as it is known. */
export interface CircuitChoices {
  /** The longest way between two sets; null where there are no two. */
  readonly way: { readonly from: string; readonly to: string; readonly wireM: number } | null
  readonly wires: readonly Choice[]
  readonly supplies: readonly Choice[]
}

export const NO_CHOICES: CircuitChoices = { way: null, wires: [], supplies: [] }

/** Keeps a signal filled with what each choice would give a circuit, whenever the plan has settled. Returns the undoing of itself. */
export const searchChoices = (
  store: Store,
  circuit: CircuitId,
  choices: Signal<CircuitChoices>,
): (() => void) =>
  effect(() => {
    if (store.dragging.value) return undefined
    const plan = store.settled.value
    const ground = store.ground.value
    choices.value = NO_CHOICES
    return askWhenStill(
      () => ({ ask: 'choices', plan, measured: measurePlan(plan, ground), circuit }),
      (answer) => {
        choices.value = withAnswer(choices.peek(), answer)
      },
    )
  })

function withAnswer(known: CircuitChoices, answer: CircuitAnswer): CircuitChoices {
  switch (answer.kind) {
    case 'remedies':
      return known
    case 'longest-way':
      return { ...known, way: answer.way }
    case 'choice':
      return answer.of === 'wire'
        ? { ...known, wires: [...known.wires, answer.choice] }
        : { ...known, supplies: [...known.supplies, answer.choice] }
  }
}
