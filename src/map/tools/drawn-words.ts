import type { Place } from '../../plan/place'
import { type Line, lineName, type Plan, verticesOf } from '../../plan/plan'

/** Whether two lines run from end to end on one path. */
function isBeside(plan: Plan, a: Line, b: Line): boolean {
  if (![a.from, a.to].every((end) => end === b.from || end === b.to)) return false
  const [ours, theirs] = [verticesOf(plan, a), verticesOf(plan, b)]
  const inTurn = a.from === b.from ? theirs : theirs.toReversed()
  return (
    ours.length === inTurn.length &&
    ours.every(([lon, lat], i) => lon === inTurn[i]![0] && lat === inTurn[i]![1])
  )
}

/** What was just drawn: whether it is joined to wire, or lies on a line that was there, as a second run is meant to and a slip is not. */
export function drawnSentence(plan: Plan, line: Line, places: readonly Place[]): string {
  const joined = places.some(({ kind }) => kind === 'wire') ? ', joined to the wire' : ''
  const isSecond = [...plan.lines.values()].some((other) => other !== line && isBeside(plan, line, other))
  return `Line ${lineName(plan, line)} drawn${joined}${isSecond ? ': a second wire on the path of the first' : ''}`
}
