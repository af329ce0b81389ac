import type { Plan } from '../../plan/plan'
import { bad, type Result } from '../../problem'
import { fromBase64Url, toBase64Url } from './base64-url'
import { packPlan, unpackPlan } from './pack-plan'

/**
 * What stands before the plan in an address. It is the fragment, which browsers send to no server.
 */
const MARK = 'plan='
/** Letters of an address that chat programs and mail pass on whole (common practice); a longer one may arrive cut off. */
export const SAFE_LETTERS = 8000

/** The address that opens a plan with the program at `program`, which may bear a fragment of its own. */
export const planLink = (program: string, plan: Plan): string =>
  `${program.replace(/#.*$/s, '')}#${MARK}${toBase64Url(packPlan(plan))}`

/** The plan that an address carries in its fragment; undefined where it carries none. */
export function planOfFragment(fragment: string): Result<Plan> | undefined {
  const text = fragment.replace(/^#/, '')
  if (!text.startsWith(MARK)) return undefined
  const packed = fromBase64Url(text.slice(MARK.length))
  if (packed) return unpackPlan(packed)
  return bad({
    code: 'damaged',
    at: '',
    message: 'The link to the plan has not come whole: ask for it once more, or for the plan as a file.',
  })
}
