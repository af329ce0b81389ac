import { placeOf } from '../journal/keys'
import type { Plan } from '../plan/plan'
import { propertyWords, thingWords } from './property-words'
import { formatList } from './units'

/** What a step of a hand did, by its keys. */
export interface StepDone {
  readonly keys: readonly string[]
  /** Those of its things that it put in, and that it took out; keys with no member. */
  readonly made: readonly string[]
  readonly gone: readonly string[]
}

/** What a step did, thing by thing: `added Ford; changed the name and place of Camp`. */
export function stepWords(plan: Plan, { keys, made, gone }: StepDone): string {
  const isWhole = new Set([...made, ...gone])
  const changed = keys.filter((key) => !isWhole.has(thingOf(key)) && !isOrder(key))
  const parts = [
    ...told(
      'added',
      made.map((key) => thingWords(plan, key)),
    ),
    ...told(
      'took out',
      gone.map((key) => thingWords(plan, key)),
    ),
    ...told('changed', [...new Set(changed.map((key) => propertyWords(plan, key)))]),
  ]
  return parts.join('; ') || 'changed the order of a list'
}

const told = (verb: string, names: readonly string[]): readonly string[] =>
  names.length === 0 ? [] : [`${verb} ${formatList(names)}`]

/** The key of the thing that a key belongs to. */
export const thingOf = (key: string): string => key.slice(0, key.length - (placeOf(key)?.member.length ?? 0))

/** Where a thing stands in its list is no property that anybody asks for. */
const isOrder = (key: string): boolean => placeOf(key)?.member === '' && placeOf(key)?.kind !== 'plan'
