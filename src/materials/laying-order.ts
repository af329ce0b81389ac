import type { LineId, StationId } from '../plan/id'
import type { Plan } from '../plan/plan'

/**
 * In which order lines are laid: from where the supply of the first circuit stands, or its first set, always on from a station that wire has
 * reached, so that each new line can be tried back to the beginning; of several in the order of the plan.
 */
export function layingOrder(plan: Plan, lines: readonly LineId[]): readonly LineId[] {
  const circuit = [...plan.circuits.values()].find((each) => each.lines.some((line) => lines.includes(line)))
  const start = circuit?.supply?.at ?? circuit?.sets.keys().next().value
  const reached = new Set<StationId>(start ? [start as StationId] : [])
  const left = new Set(lines)
  const order: LineId[] = []
  const take = (id: LineId) => {
    const line = plan.lines.get(id)
    if (line) reached.add(line.from).add(line.to)
    left.delete(id)
    order.push(id)
  }
  while (left.size > 0) {
    const touches = (id: LineId) => {
      const line = plan.lines.get(id)
      return line && (reached.has(line.from) || reached.has(line.to))
    }
    const [first] = left
    take([...left].find(touches) ?? first!)
  }
  return order
}
