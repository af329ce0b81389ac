import type { CircuitId, LineId, StationId } from './id'
import type { Circuit, Lay, Line, Plan, Position } from './plan'
import { onGlobe } from './position'
import { assertNewCircuit, assertNewFeature, putCircuit, putLine } from './put'

/** Leads a line along other bends. Its legs are laid alike; what single legs said of themselves is gone with them. */
export function rerouteLine(plan: Plan, id: LineId, bends: readonly Position[], lay: Lay = 'surface'): Plan {
  const line = plan.lines.get(id)
  return line ? putLine(plan, { ...line, bends: bends.map(onGlobe), legs: legsFor(bends, lay) }) : plan
}

/** A line of a net that is to be drawn. */
export interface NetLine {
  readonly id: LineId
  readonly from: StationId
  readonly to: StationId
  readonly bends: readonly Position[]
}

/**
 * Draws every line of a net, of one wire, and one circuit over them all. Telephones and the supply are those of the circuit that
 * it stands in for, where one is given: that circuit keeps its name and gives up its own lines, which stay drawn.
 */
export function drawNet(
  plan: Plan,
  lines: readonly NetLine[],
  {
    wire,
    lay = 'surface',
    circuit,
  }: { wire: string; lay?: Lay; circuit: { id: CircuitId; name: string } | Circuit },
): Plan {
  if (!plan.circuits.has(circuit.id)) assertNewCircuit(plan, circuit.id)
  const drawn = lines.reduce((before, { id, from, to, bends }) => {
    assertNewFeature(before, id)
    const line: Line = {
      id,
      from,
      to,
      bends: bends.map(onGlobe),
      legs: legsFor(bends, lay),
      wire,
      pairs: 1,
      return: 'pair',
    }
    return putLine(before, line)
  }, plan)
  const blank = { sets: new Map<StationId, string>(), supply: null }
  return putCircuit(drawn, { ...blank, ...circuit, lines: lines.map(({ id }) => id) })
}

const legsFor = (bends: readonly Position[], lay: Lay) =>
  Array.from({ length: bends.length + 1 }, () => ({ lay }))
