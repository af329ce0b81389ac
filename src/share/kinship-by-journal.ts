import type { Kinship } from '../files/carry/kinship'
import { HEADS } from '../files/plan-fingerprint'
import type { Plan } from '../plan/plan'
import { isObject } from '../schema/schema'

/** How far each hand had come in a journal. */
export interface Heads {
  readonly id: string
  readonly seen: ReadonlyMap<string, number>
}

/** What a plan bears that came without its journal, for want of room; undefined for none. */
export function headsOf(plan: Plan): Heads | undefined {
  const heads = plan.unknown?.plan?.[HEADS]
  if (!isObject(heads) || typeof heads.id !== 'string' || !isObject(heads.seen)) return undefined
  const seen = Object.entries(heads.seen).filter(
    (each): each is [string, number] => typeof each[1] === 'number',
  )
  return { id: heads.id, seen: new Map(seen) }
}

/** How two states of one journal stand to each other; undefined where they are of two. It is sure, as a fingerprint is not. */
export function kinshipByJournal(mine: Heads, theirs: Heads): Kinship['is'] | undefined {
  if (mine.id !== theirs.id) return undefined
  const has = (one: Heads, other: Heads) =>
    [...one.seen].some(([hand, number]) => number > (other.seen.get(hand) ?? 0))
  const [news, own] = [has(theirs, mine), has(mine, theirs)]
  if (news) return own ? 'both changed' : 'newer'
  return own ? 'older' : 'same'
}
