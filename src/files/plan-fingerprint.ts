import type { Plan } from '../plan/plan'
import { formatPlan } from './format-plan'

/** Member of a plan with the fingerprints that it had when it was handed on, the last ones: it says where a plan comes from, not what it is. */
export const HANDED = 'handed'

/** Member of a plan that goes by a link or by codes with no room for its journal: how far each hand had come in it. */
export const HEADS = 'heads'

/** Member of a plan that has left its pictures and walked tracks behind, as it goes by a link or by codes. */
export const LIGHT = 'light'

/** Letters that are not mistaken for one another when they are read out or written by hand; none of them spells a word with the others easily. */
const CONSONANTS = 'bdfghjklmnprstvz'
const VOWELS = 'aiou'

/** A number of 32 bits from a text: FNV-1a, and the last mixing of MurmurHash3 so that every bit of it hangs on every letter. */
function hashOf(text: string): number {
  let hash = 0x811c9dc5
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193)
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b)
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35)
  return (hash ^ (hash >>> 16)) >>> 0
}

/**
 * Eight letters by which two prints are told to be of one plan, or of two: `kobu-rati`. They follow from the text of the plan's file without
 * what is said there of its papers, and of where it comes from: another size of sheet is no other plan.
 *
 * Two different plans have the same ones once in 2²⁴, so they are told apart by them but not proved the same.
 */
export function planFingerprint(plan: Plan): string {
  const { papers: _, ...drawn } = plan
  const hash = hashOf(formatPlan(neverHanded(drawn)))
  const letters = [0, 6, 12, 18].map(
    (shift) => CONSONANTS[(hash >>> shift) & 15]! + VOWELS[(hash >>> (shift + 4)) & 3]!,
  )
  return `${letters.slice(0, 2).join('')}-${letters.slice(2).join('')}`
}

function neverHanded(plan: Plan): Plan {
  const own = plan.unknown?.plan
  if (!own || !(HANDED in own || LIGHT in own || HEADS in own)) return plan
  const { [HANDED]: _, [LIGHT]: __, [HEADS]: ___, ...others } = own
  return { ...plan, unknown: { ...plan.unknown, plan: others } }
}
