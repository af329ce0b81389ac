import { remembering } from '../memo'
import type { CircuitId, LineId } from './id'
import type { Circuit, Plan } from './plan'

/**
 * Circuits that ride on others: a phantom over two pairs, a simplex over one pair and the earth.
 *
 * A file does not say which pair a circuit has. Circuits over a pair of their own have the pairs of a line in the order of the plan; a
 * rider takes those of the circuits that go farthest along with it, then spare ones. So it rides where it can, on the same circuits all
 * along its way. Two riders never share a pair.
 */

type Lies = Pick<Circuit, 'id' | 'lines' | 'over'>

/** How many pairs of each line a circuit has for itself or lies over. */
export const pairsUnder = ({ over }: Pick<Circuit, 'over'>): 1 | 2 => (over === 'phantom' ? 2 : 1)

/** Pairs that a line must have for the circuits on it: one for each circuit with a pair of its own, and all that its riders lie over. */
export function pairsNeeded(onLine: readonly Pick<Circuit, 'over'>[]): number {
  let [own, ridden] = [0, 0]
  for (const circuit of onLine) {
    if (circuit.over) ridden += pairsUnder(circuit)
    else own++
  }
  return Math.max(own, ridden)
}

/** The circuits on whose pairs each rider lies, in the order of the plan; a rider on spare pairs alone lies on none. */
export function riddenBy(circuits: Iterable<Lies>): ReadonlyMap<CircuitId, readonly CircuitId[]> {
  const all = [...circuits]
  const riders = all.filter(({ over }) => over)
  const taken = new Map<LineId, Set<CircuitId>>()
  return new Map(
    riders.map((rider) => {
      const along = new Set(rider.lines)
      const shared = (other: Lies) => other.lines.reduce((sum, line) => sum + (along.has(line) ? 1 : 0), 0)
      const beside = all
        .filter((other) => !other.over)
        .map((other) => ({ other, lines: new Set(other.lines), shared: shared(other) }))
        .filter((each) => each.shared > 0)
        .sort((a, b) => b.shared - a.shared)
      const ridden = new Set<CircuitId>()
      for (const line of along) {
        const gone = taken.get(line) ?? new Set()
        taken.set(line, gone)
        const free = beside.filter(({ other, lines }) => lines.has(line) && !gone.has(other.id))
        for (const { other } of free.slice(0, pairsUnder(rider))) {
          gone.add(other.id)
          ridden.add(other.id)
        }
      }
      return [rider.id, all.flatMap(({ id }) => (ridden.has(id) ? [id] : []))] as const
    }),
  )
}

const remembered = remembering((circuits: Plan['circuits']) => {
  const ridden = riddenBy(circuits.values())
  return new Set([...ridden].flatMap(([rider, below]) => [rider, ...below]))
})

/** The circuits with repeating coils at both ends: those that ride, and those that are ridden. */
export const circuitsWithCoils = (plan: Pick<Plan, 'circuits'>): ReadonlySet<CircuitId> =>
  remembered(plan.circuits)
