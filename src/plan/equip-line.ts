import { setSet, setSupply } from './circuit-edits'
import { circuitsOfLine, stationsOfCircuit } from './circuit-topology'
import type { LineId, StationId } from './id'
import type { Circuit, Plan } from './plan'

/** What is put at the ends of a line that is drawn, until the person says otherwise. */
export interface Equipment {
  /** Catalog id of a telephone; empty for none. */
  readonly set: string
  /** Catalog id of a supply; null where every set feeds itself. */
  readonly supply: string | null
}

/** The kind of telephone that a circuit was given last. */
export const lastSetOf = ({ sets }: Circuit): string | undefined => [...sets.values()].at(-1)

/**
 * Puts telephones at the ends of a line that was just drawn, where its circuit has not been before: of the kind that the circuit has, or
 * else the given one. A circuit that the line began also gets its supply, at the line's start. What is a joint stays one.
 */
export function equipLine(
  plan: Plan,
  id: LineId,
  { set, supply }: Equipment,
  joints: ReadonlySet<StationId>,
): Plan {
  const line = plan.lines.get(id)
  const circuit = circuitsOfLine(plan, id)[0]
  if (!line || !circuit) return plan
  const others = { lines: circuit.lines.filter((each) => each !== id) }
  const reached = new Set(stationsOfCircuit(plan, others))
  const ends = [line.from, line.to].filter((end) => !reached.has(end) && !joints.has(end))
  const kind = lastSetOf(circuit) ?? set
  const withSets = kind ? ends.reduce((next, end) => setSet(next, circuit.id, end, kind), plan) : plan
  return supply && others.lines.length === 0
    ? setSupply(withSets, circuit.id, { type: supply, at: line.from })
    : withSets
}
