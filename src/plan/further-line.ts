import type { Position } from '../geo/position'
import { setSet, setSupply } from './circuit-edits'
import type { Equipment } from './equip-line'
import type { CircuitId, LineId, StationId } from './id'
import type { Lay, Line, Plan } from './plan'
import { addStation } from './station-edits'
import { withCircuit, withLine } from './with-feature'

/** A telephone more, at the end of a line of its own. */
export interface Further extends Equipment {
  readonly from: StationId
  /** The circuit that it comes onto; null for one of its own, with the same telephone where it begins. */
  readonly circuit: CircuitId | null
  /** What its station is called, and where it stands. */
  readonly name: string
  readonly to: Position
  readonly bends: readonly Position[]
  readonly wire: string
  readonly lay: Lay
  readonly ids: { readonly station: StationId; readonly line: LineId; readonly circuit: CircuitId }
}

/** The plan with one more telephone on a circuit, and the line that leads there. */
export function withFurther(plan: Plan, further: Further): Plan {
  const { from, name, to, bends, wire, lay, ids, set } = further
  const legs = Array.from({ length: bends.length + 1 }, () => ({ lay }))
  const line: Line = { id: ids.line, from, to: ids.station, bends, legs, wire, pairs: 1, return: 'pair' }
  const stood = withLine(addStation(plan, { id: ids.station, name, position: to }), line)
  const joined = further.circuit === null ? undefined : plan.circuits.get(further.circuit)
  if (joined) {
    const longer = withCircuit(stood, { ...joined, lines: [...joined.lines, ids.line] })
    return setSet(longer, joined.id, ids.station, set)
  }
  const own = { id: ids.circuit, name: '', lines: [ids.line], supply: null }
  const begun = withCircuit(stood, { ...own, sets: new Map([from, ids.station].map((at) => [at, set])) })
  return further.supply ? setSupply(begun, ids.circuit, { type: further.supply, at: from }) : begun
}
