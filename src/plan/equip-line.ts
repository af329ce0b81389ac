import { setSet, setSupply } from './circuit-edits'
import { circuitsOfLine, stationsOfCircuit } from './circuit-topology'
import type { LineId, StationId } from './id'
import type { Plan } from './plan'

/** What is put at the ends of a line that is drawn, until the person says otherwise. */
export interface Equipment {
  /** Catalog id of a telephone; empty for none. */
  readonly set: string
  /** Catalog id of a supply; null where every set feeds itself. */
  readonly supply: string | null
}

/**
 * Puts telephones at the ends of a line that was just drawn, where its circuit has not been before; a circuit that the line began also gets
 * its supply, at the line's start. What is a joint stays one.
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
  const withSets = set ? ends.reduce((next, end) => setSet(next, circuit.id, end, set), plan) : plan
  return supply && others.lines.length === 0
    ? setSupply(withSets, circuit.id, { type: supply, at: line.from })
    : withSets
}
