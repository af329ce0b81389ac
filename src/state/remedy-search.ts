import { effect } from '@preact/signals'
import { measurePlan } from '../measure/measure-line'
import { isAmiss } from '../report/remedies'
import type { RemedyAnswer, RemedyQuestion } from './remedy-worker'
import type { Store } from './store'

/** How long the hand must be still before the search begins, ms. */
const STILL_MS = 250

/**
 * Looks for remedies off the main thread whenever the plan has settled, and puts them into `store.remedies`. A circuit that is
 * not among the keys is still being searched, or has nothing amiss. Returns the undoing of itself.
 */
export function searchRemedies(store: Store): () => void {
  let worker: Worker | undefined
  let waiting: ReturnType<typeof setTimeout> | undefined

  const abandon = () => {
    clearTimeout(waiting)
    worker?.terminate()
    worker = undefined
  }
  const begin = (question: RemedyQuestion) => {
    worker = new Worker(new URL('./remedy-worker.ts', import.meta.url), { type: 'module' })
    worker.onmessage = ({ data: { circuit, remedies } }: MessageEvent<RemedyAnswer>) => {
      store.remedies.value = new Map(store.remedies.peek()).set(circuit, remedies)
    }
    worker.postMessage(question)
  }

  const stop = effect(() => {
    abandon()
    if (store.dragging.value) return
    const plan = store.settled.value
    const ground = store.ground.value
    const circuits = store.report.value.circuits.filter(isAmiss).map(({ id }) => id)
    store.remedies.value = new Map()
    if (circuits.length === 0) return
    waiting = setTimeout(() => begin({ plan, measured: measurePlan(plan, ground), circuits }), STILL_MS)
  })
  return () => {
    stop()
    abandon()
  }
}
