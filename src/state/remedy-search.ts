import { effect } from '@preact/signals'
import { askWhenStill } from '../jobs/ask-circuits'
import { measurePlan } from '../measure/measure-line'
import { isAmiss } from '../report/remedies'
import type { Store } from './store'

/**
 * Looks for remedies off the main thread whenever the plan has settled, and puts them into `store.remedies`. A circuit that is
 * not among the keys is still being searched, or has nothing amiss. Returns the undoing of itself.
 */
export const searchRemedies = (store: Store): (() => void) =>
  effect(() => {
    if (store.dragging.value) return undefined
    const plan = store.settled.value
    const ground = store.ground.value
    const circuits = store.report.value.circuits.filter(isAmiss).map(({ id }) => id)
    store.remedies.value = new Map()
    if (circuits.length === 0) return undefined
    return askWhenStill(
      () => ({ ask: 'remedies', plan, measured: measurePlan(plan, ground), circuits }),
      (answer) => {
        if (answer.kind === 'remedies')
          store.remedies.value = new Map(store.remedies.peek()).set(answer.circuit, answer.remedies)
      },
    )
  })
