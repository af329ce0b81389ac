import { recordsOf } from '../plan/field-records'
import type { Plan } from '../plan/plan'

/** An id for what is recorded next: by chance, since two who walk the same plan apart must not take the same. */
export function newRecordId(plan: Plan): string {
  const taken = new Set(recordsOf(plan).map(({ id }) => id))
  for (;;) {
    const [number] = crypto.getRandomValues(new Uint32Array(1))
    const id = `record-${number!.toString(36).padStart(7, '0')}`
    if (!taken.has(id)) return id
  }
}
