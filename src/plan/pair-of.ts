import type { Circuit, Line, Plan } from './plan'

/** Which pair of a line a circuit takes, from 1: its circuits take its pairs in the order of the plan. 0 where it takes none. */
export function pairOf({ circuits }: Plan, circuit: Pick<Circuit, 'id'>, line: Pick<Line, 'id'>): number {
  const sharing = [...circuits.values()].filter(({ lines }) => lines.includes(line.id))
  return sharing.findIndex(({ id }) => id === circuit.id) + 1
}
