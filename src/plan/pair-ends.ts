import { connectedPieces } from './circuit-topology'
import type { CircuitId, LineId, StationId } from './id'
import { pairsOf } from './pair-of'
import type { Circuit, Plan } from './plan'

/** One pair of one line as it comes in at a station: what it carries, and the two posts that it is tied to there. */
export interface PairEnd {
  readonly line: LineId
  /** From 1. */
  readonly pair: number
  /** Undefined for a spare pair. */
  readonly circuit: CircuitId | undefined
  /** What rides on it, and meets it at the middle of its repeating coil. */
  readonly rider: CircuitId | undefined
  readonly posts: readonly [number, number]
}

/**
 * The pairs that come in at a station, line by line as papers number them, and the posts that they take: 1 and 2, 3 and 4, and so on. A line's
 * circuits take its pairs in the order of the plan. An earth return takes two posts as well, the wire on the first, the electrode on the second.
 */
export function pairEndsAt(plan: Plan, station: StationId): readonly PairEnd[] {
  const circuits = [...plan.circuits.values()]
  const ends = [...plan.lines.values()]
    .filter(({ from, to }) => from === station || to === station)
    .flatMap((line) => {
      const carried = circuits.filter(({ lines }) => lines.includes(line.id))
      const on = (pair: number, isRider: boolean) =>
        carried.find((each) => Boolean(each.over) === isRider && pairsOf(plan, each, line).includes(pair))?.id
      return Array.from({ length: line.pairs }, (_, i) => ({
        line: line.id,
        pair: i + 1,
        circuit: on(i + 1, false),
        rider: on(i + 1, true),
      }))
    })
  return ends.map((end, i) => ({ ...end, posts: [2 * i + 1, 2 * i + 2] }))
}

/**
 * The sides of a circuit that a unit at a station keeps apart: the pieces into which its lines fall when the station is taken out, in the
 * order of its lines.
 */
export function sidesAt(plan: Plan, circuit: Circuit, station: StationId): readonly (readonly LineId[])[] {
  const cutOff = (end: StationId, line: LineId) => (end === station ? (`${end} ${line}` as StationId) : end)
  return connectedPieces(circuit.lines, (id) => {
    const line = plan.lines.get(id)
    return line && { from: cutOff(line.from, id), to: cutOff(line.to, id) }
  })
}
