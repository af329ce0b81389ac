import type { LineId } from '../plan/id'
import { freeFirst, type NetHours } from './hours'

/**
 * Which lines each crew lays: the longest first, each to the crew that is free first, as the hours of the whole net are reckoned. Each crew's
 * lines are in the order of the plan.
 */
export function linesByCrew({
  lines,
  crews,
}: Pick<NetHours, 'lines' | 'crews'>): readonly (readonly LineId[])[] {
  const doneH = new Array<number>(crews).fill(0)
  const crewOf = new Map<LineId, number>()
  for (const { line, totalH } of lines.toSorted((a, b) => b.totalH - a.totalH)) {
    const crew = freeFirst(doneH)
    doneH[crew]! += totalH
    crewOf.set(line, crew)
  }
  return doneH.map((_, crew) => lines.flatMap(({ line }) => (crewOf.get(line) === crew ? [line] : [])))
}
