import { BUILT_IN } from '../catalog/built-in'
import type { Position } from '../geo/position'
import { onGlobe } from '../geo/position'
import { bad, ok, type Result } from '../problem'
import { limitFault } from '../schema/limit'
import { circuitsAtStation, circuitsOfLine } from './circuit-topology'
import { recordsOf } from './field-records'
import type { CircuitId, LineId, StationId } from './id'
import { LIMITS } from './limits'
import { withoutLines } from './line-removal'
import { DEFAULT_ELECTRODE_OHMS, type Lay, type Line, lineName, type Plan, plainLineName } from './plan'
import { withSoundRiders } from './rider-edits'
import { pairsUnder } from './riding'
import { assertNewCircuit, assertNewFeature, withCircuit, withLine } from './with-feature'

export interface NewLine {
  readonly id: LineId
  /** Taken by the circuit that the line starts, where it joins none. */
  readonly newCircuitId: CircuitId
  readonly from: StationId
  readonly to: StationId
  readonly bends: readonly Position[]
  readonly wire: string
  readonly lay: Lay
}

/**
 * Draws a line. It joins the circuit of the station where it starts, if that has just one; else that of the station where
 * it ends, if that has just one; else it starts a circuit of its own. A line from a station to itself draws nothing.
 */
export function addLine(plan: Plan, { id, newCircuitId, from, to, bends, wire, lay }: NewLine): Plan {
  if (from === to || !plan.stations.has(from) || !plan.stations.has(to)) return plan
  assertNewFeature(plan, id)
  const joined = soleCircuitAt(plan, from) ?? soleCircuitAt(plan, to)
  const legs = Array.from({ length: bends.length + 1 }, () => ({ lay }))
  const pairs = joined ? pairsUnder(joined) : 1
  const line: Line = { id, from, to, bends: bends.map(onGlobe), legs, wire, pairs, return: 'pair' }
  const drawn = withLine(plan, line)
  if (joined) return withCircuit(drawn, { ...joined, lines: [...joined.lines, id] })
  assertNewCircuit(plan, newCircuitId)
  const name = plainLineName(plan, line)
  return withCircuit(drawn, { id: newCircuitId, name, lines: [id], sets: new Map(), supply: null })
}

function soleCircuitAt(plan: Plan, id: StationId) {
  const circuits = circuitsAtStation(plan, id)
  return circuits.length === 1 ? circuits[0] : undefined
}

export const removeLine = (plan: Plan, id: LineId): Plan =>
  plan.lines.has(id) ? withoutLines(plan, new Set([id])) : plan

export function setWire(plan: Plan, id: LineId, wire: string): Plan {
  const line = plan.lines.get(id)
  const known = [...plan.catalog.wires, ...BUILT_IN.wires].some((each) => each.id === wire)
  return line && known && line.wire !== wire ? withLine(plan, { ...line, wire }) : plan
}

/** Marks a line as old, nicked wire, or as sound. */
export function setWorn(plan: Plan, id: LineId, isWorn: boolean): Plan {
  const line = plan.lines.get(id)
  if (!line || Boolean(line.worn) === isWorn) return plan
  const { worn: _, ...sound } = line
  return withLine(plan, isWorn ? { ...line, worn: true } : sound)
}

/** Refused below the number of circuits that the line carries. */
export function setPairs(plan: Plan, id: LineId, pairs: number): Result<Plan> {
  const line = plan.lines.get(id)
  const fault = limitFault(LIMITS.pairs, pairs)
  if (fault) return bad({ code: 'out-of-range', at: id, message: fault })
  if (!line || line.pairs === pairs) return ok(plan)
  const inUse = circuitsOfLine(plan, id).filter(({ over }) => !over).length
  if (pairs < inUse) {
    const message = `${lineName(plan, line)} carries ${inUse} circuits: take one out of it before it has ${pairs === 1 ? 'one pair' : `${pairs} pairs`}.`
    return bad({ code: 'too-few-pairs', at: id, message })
  }
  return withSoundRiders(plan, withLine(plan, { ...line, pairs }))
}

/** Pair or earth return. The electrodes keep their figures while the line is a pair. */
export function setReturn(
  plan: Plan,
  id: LineId,
  way: 'pair' | 'earth',
  electrodeOhms?: readonly [number, number],
): Result<Plan> {
  const line = plan.lines.get(id)
  if (!line) return ok(plan)
  for (const ohms of electrodeOhms ?? []) {
    const fault = limitFault(LIMITS.electrodeOhms, ohms)
    if (fault) return bad({ code: 'out-of-range', at: id, message: fault })
  }
  const before = line.electrodeOhms
  const given = electrodeOhms && ([electrodeOhms[0] + 0, electrodeOhms[1] + 0] as const)
  const after =
    given ??
    before ??
    (way === 'earth' ? ([DEFAULT_ELECTRODE_OHMS, DEFAULT_ELECTRODE_OHMS] as const) : undefined)
  if (line.return === way && before?.[0] === after?.[0] && before?.[1] === after?.[1]) return ok(plan)
  return withSoundRiders(
    plan,
    withLine(plan, { ...line, return: way, ...(after && { electrodeOhms: after }) }),
  )
}

/**
 * Turns a line round: `from` and `to` change places, with all that is told from one to the other. A line with records stays as it is:
 * they count their metres from its `from`.
 */
export function reverseLine(plan: Plan, id: LineId): Plan {
  const line = plan.lines.get(id)
  if (!line || recordsOf(plan).some((record) => record.line === id)) return plan
  return withLine(plan, {
    ...line,
    from: line.to,
    to: line.from,
    bends: line.bends.toReversed(),
    legs: line.legs.toReversed(),
    ...(line.electrodeOhms && { electrodeOhms: [line.electrodeOhms[1], line.electrodeOhms[0]] }),
    ...(line.endElevationsM && { endElevationsM: [line.endElevationsM[1], line.endElevationsM[0]] }),
  })
}
