import type { Rest } from '../plan/plan'
import { exactEntries, plainName } from './exact-members'

/** The members beside the known ones, or undefined where there are none. */
export function restOf(value: object, known: readonly string[]): Rest | undefined {
  const others = exactEntries(value).filter(([name]) => !known.includes(plainName(name)))
  return others.length > 0 ? Object.fromEntries(others) : undefined
}

/** `{ rest }` of the parts that have unknown members, or nothing where none has. */
export function restMember<K extends string>(
  parts: Readonly<Record<K, Rest | undefined>>,
): { readonly rest?: { readonly [P in K]?: Rest } } {
  const kept = Object.entries(parts).filter(([, rest]) => rest !== undefined)
  return kept.length > 0 ? { rest: Object.fromEntries(kept) as { readonly [P in K]?: Rest } } : {}
}
