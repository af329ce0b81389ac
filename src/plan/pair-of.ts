import type { CircuitId } from './id'
import type { Circuit, Line, Plan } from './plan'
import { pairsUnder, riddenBy } from './riding'

/**
 * Which pairs of a line a circuit lies over, from 1. Circuits with pairs of their own take them in the order of the plan; a rider lies over
 * the pairs of those that it rides on, then over spare ones. Empty where it takes none.
 */
export function pairsOf(
  { circuits }: Pick<Plan, 'circuits'>,
  circuit: Pick<Circuit, 'id'>,
  line: Pick<Line, 'id' | 'pairs'>,
): readonly number[] {
  const sharing = [...circuits.values()].filter(({ lines }) => lines.includes(line.id))
  const own = sharing.filter(({ over }) => !over)
  const place = own.findIndex(({ id }) => id === circuit.id)
  if (place >= 0) return [place + 1]
  const ridden = riddenBy(circuits.values())
  const free = new Set(Array.from({ length: line.pairs }, (_, i) => i + 1))
  for (const rider of sharing.filter(({ over }) => over)) {
    const pairs = lainOver(rider, ridden.get(rider.id) ?? [], own, free)
    if (rider.id === circuit.id) return pairs
    for (const pair of pairs) free.delete(pair)
  }
  return []
}

function lainOver(
  rider: Circuit,
  below: readonly CircuitId[],
  own: readonly Circuit[],
  free: ReadonlySet<number>,
): readonly number[] {
  const theirs = own.flatMap(({ id }, i) => (below.includes(id) && free.has(i + 1) ? [i + 1] : []))
  const spare = [...free].filter((pair) => pair > own.length)
  return [...theirs, ...spare].slice(0, pairsUnder(rider))
}
