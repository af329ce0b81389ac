import { effect, type Signal } from '@preact/signals'
import { circuitJobs } from '../jobs/circuit-jobs'
import { whenStill } from '../jobs/when-still'
import { measurePlan } from '../measure/measure-line'
import type { CircuitId } from '../plan/id'
import type { Beside } from '../report/beside-report'
import { keepOdds } from './known-odds'
import type { Store } from './store'

/** A circuit's bad days and its odds; null while they are reckoned. */
export interface Reckoned {
  readonly prospect: Beside | null
  /** Why none will come; empty while nothing is amiss. */
  readonly failure: string
}

const NOT_YET: Reckoned = { prospect: null, failure: '' }

/** Keeps a signal filled with a circuit's bad days and odds, off the main thread, whenever the plan has settled. Returns the undoing of itself. */
export function watchProspect(store: Store, id: CircuitId, reckoned: Signal<Reckoned>): () => void {
  const jobs = circuitJobs('Reckoning the odds')
  const stop = effect(() => {
    if (store.dragging.value) return undefined
    const plan = store.settled.value
    const ground = store.ground.value
    const found = store.report.value.circuits.find((each) => each.id === id)
    reckoned.value = NOT_YET
    if (!found) return undefined
    return whenStill(async (signal) => {
      const question = { plan, measured: measurePlan(plan, ground), found }
      const about = () => [store.settled.peek(), store.ground.peek()]
      const result = await jobs.ask('prospect', question, { signal, about })
      if (result) {
        if (result.ok) keepOdds(found, result.value?.odds)
        reckoned.value = result.ok
          ? { prospect: result.value, failure: '' }
          : { prospect: null, failure: result.problems[0]!.message }
      }
    })
  })
  return () => {
    stop()
    jobs.dispose()
  }
}
