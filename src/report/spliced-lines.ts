import type { Piece } from '../materials/spool-plan'
import type { LineId } from '../plan/id'
import type { Plan } from '../plan/plan'

/** Whether splices count in the electricity of a plan. */
export const spliceCount = ({ spliceOhms, spliceMicroS }: Plan['allowances']): boolean =>
  Boolean(spliceOhms || spliceMicroS)

/**
 * Splices in one pair of each line, as its pieces have them: of several pairs the one with most. Undefined where the plan gives
 * them neither ohms nor a leakage.
 */
export function splicesOf(
  plan: Plan,
  pieces: ReadonlyMap<LineId, readonly Piece[]>,
): ReadonlyMap<LineId, number> | undefined {
  if (!spliceCount(plan.allowances)) return undefined
  const most = (own: readonly Piece[]) => {
    const ofPair = new Map<number, number>()
    for (const { pair } of own) ofPair.set(pair, (ofPair.get(pair) ?? -1) + 1)
    return Math.max(0, ...ofPair.values())
  }
  return new Map([...pieces].map(([line, own]) => [line, most(own)]))
}
