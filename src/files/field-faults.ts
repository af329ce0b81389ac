import { valueFault } from '../plan/field-schema'
import type { Problem } from '../problem'
import { valueWords } from '../schema/limit'
import { isObject, MOST_FAULTS } from '../schema/schema'
import { repeatedIds } from './known-ids'

/** Tells what the records of a file say against themselves and each other, so far as each is sound. */
export function fieldFaults(value: unknown, faults: Problem[]): void {
  if (!Array.isArray(value)) return
  repeatedIds(value, 'plan.field', faults)
  value.forEach((record, index) => {
    if (!isObject(record) || faults.length > MOST_FAULTS) return
    const negative = valueFault(record)
    if (negative) faults.push({ code: 'out-of-range', at: `plan.field[${index}].value`, message: negative })
    const { fromM, toM } = record
    if (typeof fromM !== 'number' || typeof toM !== 'number' || fromM <= toM) return
    const message = `The stretch begins at ${valueWords(fromM)} m and ends at ${valueWords(toM)} m: give the end nearer to the line's "from" first.`
    faults.push({ code: 'turned-round', at: `plan.field[${index}].toM`, message })
  })
}
