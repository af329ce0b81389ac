import { effect } from '@preact/signals'
import { circuitJobs } from '../jobs/circuit-jobs'
import { whenStill } from '../jobs/when-still'
import { measurePlan } from '../measure/measure-line'
import { isAmiss } from '../report/remedies'
import type { Store } from './store'

/**
 * Looks for remedies off the main thread whenever the plan has settled, and puts them into `store.remedies`. A circuit that is
 * not among the keys is still being searched, or has nothing amiss; or `store.remedyFailure` says why none will come. Returns the
 * undoing of itself.
 */
export function searchRemedies(store: Store): () => void {
  const jobs = circuitJobs('The search for remedies')
  const stop = effect(() => {
    if (store.dragging.value) return undefined
    const plan = store.settled.value
    const ground = store.ground.value
    const circuits = store.report.value.circuits.filter(isAmiss).map(({ id }) => id)
    store.remedies.value = new Map()
    store.remedyFailure.value = ''
    if (circuits.length === 0) return undefined
    return whenStill(async (signal) => {
      const question = { plan, measured: measurePlan(plan, ground), circuits }
      const result = await jobs.ask('remedies', question, {
        signal,
        about: () => [store.settled.peek(), store.ground.peek()],
        onPart: ({ circuit, remedies }) => {
          store.remedies.value = new Map(store.remedies.peek()).set(circuit, remedies)
        },
      })
      if (result && !result.ok) store.remedyFailure.value = result.problems[0]!.message
    })
  })
  return () => {
    stop()
    jobs.dispose()
  }
}
