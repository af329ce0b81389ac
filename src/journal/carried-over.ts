import { EMPTY_PLAN, type Plan } from '../plan/plan'
import { standing } from './edit'
import type { Journal, MendedPlan } from './journal'
import { placeOf } from './keys'
import { mendPlan } from './mend-plan'
import { inRankOrder } from './ranks'
import { KINDS, planOfThings } from './things'

/**
 * A plan from one's own past with what others have set since: what leads back to it takes back nothing of theirs. What somebody else has
 * changed of a thing that was not there yet keeps it there.
 *
 * @param changed keys of the registers that others have set
 */
export function carriedOver(past: Plan, changed: Iterable<string>, journal: Journal): Plan {
  const touched = new Map<string, Map<string, Set<string>>>()
  for (const key of changed) {
    const { kind, id, member } = placeOf(key)!
    const things = touched.get(kind) ?? new Map<string, Set<string>>()
    touched.set(kind, things)
    things.set(id, (things.get(id) ?? new Set()).add(member))
  }
  return planOfThings((kind) => {
    const listed = KINDS[kind]!.list(past)
    const things = touched.get(kind)
    if (!things && listed instanceof Map) return listed
    const after = new Map(listed)
    const isMoved = [...(things ?? [])].some(([id, members]) => !after.has(id) || members.has(''))
    for (const [id, members] of things ?? []) {
      const thing = thingWith(journal, kind, id, members, after.get(id))
      if (thing === undefined) after.delete(id)
      else after.set(id, thing)
    }
    if (!isMoved) return after
    const ranks = [...after.keys()].map((id) => [id, journal.things.rankOf(kind, id) ?? 0] as const)
    return new Map(ranks.sort(inRankOrder).map(([id]) => [id, after.get(id)]))
  })
}

function thingWith(
  { things }: Journal,
  kind: string,
  id: string,
  members: ReadonlySet<string>,
  before: unknown,
): unknown {
  const now = things.there(kind).get(id)
  if (now === undefined || before === undefined) return now
  const own = new Map(KINDS[kind]!.spread(before as never, things.membersOf(kind, id)))
  const held = things.registersOf(kind, id)
  for (const member of members) {
    const value = standing(held.get(member))?.value
    if (member === '') continue
    if (value === undefined) own.delete(member)
    else own.set(member, value)
  }
  return KINDS[kind]!.gather(own, id)
}

/** A plan that one goes back to, mended where it no longer fits what others have done. */
export const mendedBack = (past: Plan, from: Plan, journal: Journal): MendedPlan =>
  mendPlan(past, [journal.things.ghosts(), from, EMPTY_PLAN])
