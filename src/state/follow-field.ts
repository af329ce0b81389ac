import { effect } from '@preact/signals'
import { newRecordId } from './new-record-id'
import type { Store } from './store'

/**
 * Loads what makes something of records as soon as a plan has any of the field, and has its figures rest on them; and makes a record of a walk
 * that was cut off.
 */
export function followField(store: Store): void {
  const stop = effect(() => {
    if (!store.plan.value.field?.length) return
    void import('../report/from-the-field').then(({ FIELD_WORK }) => {
      store.fieldWork.value = FIELD_WORK
      stop()
    })
  })
  effect(() => {
    const walk = store.takenUp.value
    if (walk?.kind !== 'track') return
    store.takenUp.value = null
    void import('../plan/add-record').then(({ addRecord }) => {
      const { line, points } = walk
      const at = points.at(-1)?.[3]
      store.tryEdit((plan) =>
        addRecord(plan, { id: newRecordId(plan), ...(at && { at }), line, kind: 'track', points }),
      )
    })
  })
}
