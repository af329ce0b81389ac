import { batch, computed, type ReadonlySignal, type Signal, signal } from '@preact/signals'
import { commit, type History } from '../plan/history'
import type { Plan } from '../plan/plan'

/**
 * What a hand holds and has not put down: the plan with it, kept in no history until then.
 *
 * @param follow when all that follows from a plan is to follow a move of the hand
 */
export function createHand(
  history: Signal<History>,
  locked: ReadonlySignal<boolean>,
  follow: (work: () => void) => void,
) {
  /** The plan as a hand has it at this moment; null when none moves. */
  const held = signal<Plan | null>(null)
  /** The same as the figures have it, which follow the hand. */
  const draft = signal<Plan | null>(null)
  /** What still waits to follow the hand finds that it holds nothing. */
  const letGo = () => {
    held.value = null
    draft.value = null
  }
  const plan = computed(() => draft.value ?? history.value.present)
  return {
    plan,
    draft,
    letGo,
    dragging: computed(() => held.value !== null),
    /** The plan as it is under the hand: what is drawn there is drawn of this, and all else of `plan`, which follows. */
    atHand: computed(() => held.value ?? plan.value),
    /** Shows an edit of the settled plan without keeping it: called at every move of a drag. */
    preview: (change: (plan: Plan) => Plan) => {
      if (locked.peek()) return
      batch(() => {
        held.value = change(history.value.present)
        follow(() => {
          draft.value = held.peek()
        })
      })
    },
    /** Ends a drag: what is previewed becomes one undo step. */
    settle: () => {
      batch(() => {
        if (held.value) history.value = commit(history.value, held.value)
        letGo()
      })
    },
    /** Ends a drag and forgets it. */
    cancel: () => batch(letGo),
  }
}
