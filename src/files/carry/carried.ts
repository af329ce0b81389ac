import type { Plan } from '../../plan/plan'
import { bad, type Result } from '../../problem'
import { fromBase64Url } from './base64-url'
import { unpackPlan } from './pack-plan'
import { planOfFragment } from './plan-link'
import { WORDS_OF_PLANS } from './words-of-plans'

/** Stand before what a code on paper carries, and before the fingerprint of the plan that it is a part of. */
export const MARK = 'code='
export const PART = '&of='

/** What came in: a plan, or a line of one with its neighbours. */
export interface Carried {
  readonly plan: Plan
  /** Fingerprint of the plan that it is a part of; its first line is the one that it is about. */
  readonly partOf?: string
}

/** What an address carries in its fragment, by a link or by a code on paper; undefined where it carries nothing of ours. */
export function carriedOfFragment(fragment: string): Result<Carried> | undefined {
  const text = fragment.replace(/^#/, '')
  if (!text.startsWith(MARK)) {
    const linked = planOfFragment(fragment)
    return linked?.ok ? { ok: true, value: { plan: linked.value } } : linked
  }
  const [packed = '', fingerprint] = text.slice(MARK.length).split(PART)
  const bytes = fromBase64Url(packed)
  if (!bytes)
    return bad({
      code: 'damaged',
      at: '',
      message: 'The code has not come whole: take it once more, closer and in better light.',
    })
  const plan = unpackPlan(bytes, WORDS_OF_PLANS)
  if (!plan.ok) return plan
  return { ok: true, value: { plan: plan.value, ...(fingerprint && { partOf: fingerprint }) } }
}
