import { askBox } from './ask-box'
import { openLine } from './box-line'
import { beginningFromBase } from './from-base'
import type { PlanKeys } from './plan-keys'
import { passOf, tagOf } from './plan-keys'
import { type Begun, lastBeginning } from './stream-reads'

/** Who carries what the hands of a plan write to each other. */
export interface Carrier {
  /** Whether there is one at all. */
  readonly isThere: () => Promise<boolean>
  /** Has it make room for a plan. A sentence where it does not; else empty. */
  readonly announce: (keys: PlanKeys) => Promise<string>
  readonly lastBeginning: (keys: PlanKeys) => Promise<Begun | null | undefined>
  /** The same, of a plan that it must fetch first. A sentence where that did not go; undefined where it has nobody to fetch it from. */
  readonly beginningFromBase?: (keys: PlanKeys) => Promise<Begun | string | undefined>
  readonly openLine: typeof openLine
}

const PLANS = '/share/plans'

/** The box that served this page. */
export const overBox: Carrier = {
  isThere: async () => (await askBox()) !== null,
  announce: async (keys) => {
    const { read, write } = passOf(keys)
    try {
      const answer = await fetch(new URL(PLANS, location.href), {
        method: 'POST',
        body: JSON.stringify({ tag: tagOf(keys), read, ...(write && { write }) }),
      })
      if (answer.ok) return ''
      return ((await answer.json()) as { why?: string }).why ?? 'The box does not take the plan.'
    } catch {
      return 'The box is not reached: go nearer, or see whether it is on.'
    }
  },
  lastBeginning,
  beginningFromBase: (keys) => beginningFromBase(keys, overBox.announce),
  openLine,
}
