import { effect } from '@preact/signals'
import { circuitJobs } from '../jobs/circuit-jobs'
import { whenStill } from '../jobs/when-still'
import { measurePlan } from '../measure/measure-line'
import { isAmiss } from '../report/is-amiss'
import type { Store } from './store'

/**
 * Looks for remedies off the main thread whenever the plan has settled, and puts them into `store.remedies`; before them what the worst weather
 * takes, into `store.worstBecause`. A circuit that is
 * not among the keys is still being searched, or has nothing amiss; or `store.remedyFailure` says why none will come. Returns the
 * undoing of itself.
 */
export function searchRemedies(store: Store): () => void {
  const jobs = circuitJobs('The search for remedies')
  const stop = effect(() => {
    if (store.dragging.value) return undefined
    const plan = store.settled.value
    const ground = store.ground.value
    const found = store.report.value.circuits
    const circuits = found.filter(isAmiss).map(({ id }) => id)
    const thin = found.filter((each) => !isAmiss(each) && each.worst.verdict === 'thin').map(({ id }) => id)
    const faint = found.filter(({ switchboard }) => switchboard?.faint.length).map(({ id }) => id)
    store.remedies.value = new Map()
    store.faintRemedies.value = new Map()
    store.worstBecause.value = new Map()
    store.remedyFailure.value = ''
    if (circuits.length + thin.length + faint.length === 0) return undefined
    return whenStill(async (signal) => {
      const question = { plan, measured: measurePlan(plan, ground), circuits, thin, faint }
      const result = await jobs.ask('remedies', question, {
        signal,
        about: () => [store.settled.peek(), store.ground.peek()],
        onPart: (part) => {
          if ('remedies' in part)
            store.remedies.value = new Map(store.remedies.peek()).set(part.circuit, part.remedies)
          else if ('forFaint' in part)
            store.faintRemedies.value = new Map(store.faintRemedies.peek()).set(part.circuit, part.forFaint)
          else store.worstBecause.value = new Map(store.worstBecause.peek()).set(part.circuit, part.because)
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
