import type { Plan } from '../plan/plan'

/** Member of a plan by which it is known again as one that is shared: the name of its stream, which is no key. */
const MEMBER = 'shared'

export const sharedTagOf = (plan: Plan): string | undefined => {
  const tag = plan.unknown?.plan?.[MEMBER]
  return typeof tag === 'string' ? tag : undefined
}

export const withTag = (plan: Plan, tag: string): Plan => ({
  ...plan,
  unknown: { ...plan.unknown, plan: { ...plan.unknown?.plan, [MEMBER]: tag } },
})
