import { askBox } from './ask-box'
import { AGAIN_MS } from './box-connection'
import type { PlanKeys } from './plan-keys'
import { type Begun, lastBeginning } from './stream-reads'

/** A plan that the base has comes within so long, ms: else it is not reached, or has none. */
const PATIENCE_MS = 20_000

/**
 * What a plan begins with that this box does not know yet, where the box has a base that may: the box is told of the plan and fetches it from
 * there. A sentence where none comes; undefined where the box has no base.
 */
export async function beginningFromBase(
  keys: PlanKeys,
  announce: (keys: PlanKeys) => Promise<string>,
): Promise<Begun | string | undefined> {
  if (!(await askBox())?.hasBase) return undefined
  const why = await announce(keys)
  if (why) return why
  for (const until = Date.now() + PATIENCE_MS; Date.now() < until; ) {
    const found = await lastBeginning(keys).catch(() => undefined)
    if (found) return found
    await new Promise((done) => setTimeout(done, AGAIN_MS))
  }
  return 'This box does not know this invitation, and its base has not answered yet: open the invitation again when the base is reached.'
}
