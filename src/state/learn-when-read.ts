import { effect } from '@preact/signals'
import type { Store } from './store'

/** Loads what learns from readings as soon as a plan has records of the field, and has its figures rest on them. */
export function learnWhenRead(store: Store): void {
  const stop = effect(() => {
    if (!store.plan.value.field?.length) return
    void import('../field/learned').then(({ learnedFrom }) => {
      store.learning.value = learnedFrom
      stop()
    })
  })
}
