import { effect } from '@preact/signals'
import type { Store } from './store'

/** Loads what makes something of records as soon as a plan has any of the field, and has its figures rest on them. */
export function followField(store: Store): void {
  const stop = effect(() => {
    if (!store.plan.value.field?.length) return
    void import('../report/from-the-field').then(({ FIELD_WORK }) => {
      store.fieldWork.value = FIELD_WORK
      stop()
    })
  })
}
