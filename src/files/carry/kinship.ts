import type { Plan } from '../../plan/plan'
import { HANDED, planFingerprint } from '../plan-fingerprint'

/** How a plan that came in stands to the one on the table. */
export type Kinship =
  | { readonly is: 'same' | 'newer' | 'older' | 'another' }
  /** Both went on from one that both once were; `base` is that one, where it is at hand. */
  | { readonly is: 'both changed'; readonly base: Plan | undefined }

/** So many hand-overs are remembered: more hands than work on one plan between two meetings. */
const MOST_HANDED = 20

const handedOf = (plan: Plan): readonly string[] => {
  const list: unknown = plan.unknown?.plan?.[HANDED]
  return Array.isArray(list) ? list.filter((each) => typeof each === 'string') : []
}

/** The plan as it is handed on: it bears its own fingerprint besides those that it had before, so that whoever goes on from it can be told apart. */
export function handedOn(plan: Plan): Plan {
  const own = planFingerprint(plan)
  const handed = [...handedOf(plan).filter((each) => each !== own), own].slice(-MOST_HANDED)
  return { ...plan, unknown: { ...plan.unknown, plan: { ...plan.unknown?.plan, [HANDED]: handed } } }
}

/** `kept`: states of the plan on the table from before, the last first. */
export function kinshipOf(mine: Plan, theirs: Plan, kept: readonly Plan[]): Kinship {
  const [own, other] = [planFingerprint(mine), planFingerprint(theirs)]
  if (own === other) return { is: 'same' }
  const theirPast = handedOf(theirs)
  if (theirPast.includes(own)) return { is: 'newer' }
  const keptBy = new Map(kept.map((plan) => [planFingerprint(plan), plan]))
  const ownPast = new Set([...handedOf(mine), ...keptBy.keys()])
  if (ownPast.has(other)) return { is: 'older' }
  const common = theirPast.findLast((each) => ownPast.has(each))
  return common === undefined ? { is: 'another' } : { is: 'both changed', base: keptBy.get(common) }
}
