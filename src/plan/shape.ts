import type { Problem } from '../problem'
import { placeOf, faultsOf as schemaFaults } from '../schema/faults'
import { type Limit, limitFault, valueWords } from '../schema/limit'
import { isObject, MOST_FAULTS, type Schema } from '../schema/schema'

/** Looks at a value from outside and tells every fault that it has, each with its place. */
export type Check = (value: unknown, at: string, faults: Problem[]) => void

/** What a schema says, as a check among others. */
export const held =
  (schema: Schema): Check =>
  (value, at, faults) => {
    faults.push(...schemaFaults(schema, value, at))
  }

const fault = (code: string, at: string, what: string, value: unknown, wanted: string): Problem => ({
  code: value === undefined ? 'missing' : code,
  at,
  message: `${what} is ${valueWords(value)}: give ${wanted}.`,
})

/** A number within its limit. */
export const number =
  (limit: Limit): Check =>
  (value, at, faults) => {
    const message = limitFault(limit, value)
    if (message) faults.push({ code: value === undefined ? 'missing' : 'out-of-range', at, message })
  }

export const text =
  (what: string): Check =>
  (value, at, faults) => {
    if (typeof value !== 'string') faults.push(fault('wrong-type', at, what, value, 'a text in quotes'))
  }

/** A text that things are told apart by. */
export const idText =
  (what: string): Check =>
  (value, at, faults) => {
    if (typeof value !== 'string' || value === '')
      faults.push(fault('wrong-type', at, what, value, 'a text in quotes that is not empty'))
  }

export const oneOf = (what: string, words: readonly string[]): Check => {
  const known = new Set<unknown>(words)
  const wanted = words.map((word) => JSON.stringify(word)).join(' or ')
  return (value, at, faults) => {
    if (!known.has(value)) faults.push(fault('unknown-word', at, what, value, wanted))
  }
}

/** True or false. */
export const truth =
  (what: string): Check =>
  (value, at, faults) => {
    if (typeof value !== 'boolean') faults.push(fault('wrong-type', at, what, value, 'true or false'))
  }

export const listOf =
  (what: string, item: Check, length: { readonly min?: number; readonly max?: number } = {}): Check =>
  (value, at, faults) => {
    if (!Array.isArray(value)) {
      faults.push(fault('wrong-type', at, what, value, 'a list in square brackets'))
      return
    }
    const { min = 0, max = Number.POSITIVE_INFINITY } = length
    if (value.length < min || value.length > max) {
      const wanted = min === max ? `${min}` : value.length < min ? `at least ${min}` : `at most ${max}`
      const message = `${what} has ${value.length} ${value.length === 1 ? 'entry' : 'entries'}: give ${wanted}.`
      faults.push({ code: 'wrong-count', at, message })
    }
    const counted = faults.length
    for (let index = 0; index < value.length && faults.length - counted <= MOST_FAULTS; index++) {
      item(value[index], `${at}[${index}]`, faults)
    }
  }

/** An object with these members; others may stand beside them. */
export const members = (
  what: string,
  required: Readonly<Record<string, Check>>,
  optional: Readonly<Record<string, Check>> = {},
): Check => {
  const needed = Object.entries(required)
  const allowed = Object.entries(optional)
  return (value, at, faults) => {
    if (!isObject(value)) {
      faults.push(fault('wrong-type', at, what, value, 'an object in braces'))
      return
    }
    for (const [name, check] of needed) check(value[name], placeOf(at, name), faults)
    for (const [name, check] of allowed)
      if (value[name] !== undefined) check(value[name], placeOf(at, name), faults)
  }
}

/** An object whose member names are ids: `key` looks at each name, `item` at what stands under it. */
export const recordOf =
  (what: string, key: Check, item: Check): Check =>
  (value, at, faults) => {
    if (!isObject(value)) {
      faults.push(fault('wrong-type', at, what, value, 'an object in braces'))
      return
    }
    const before = faults.length
    for (const [name, each] of Object.entries(value)) {
      if (faults.length - before > MOST_FAULTS) return
      key(name, placeOf(at, name), faults)
      item(each, placeOf(at, name), faults)
    }
  }

/** Every fault of a value. */
export function faultsOf(check: Check, value: unknown, at: string): readonly Problem[] {
  const faults: Problem[] = []
  check(value, at, faults)
  return faults
}
