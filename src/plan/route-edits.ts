import type { Position } from '../geo/position'
import { onGlobe } from '../geo/position'
import type { LineId, StationId } from './id'
import type { Circuit, Lay, Line, Plan } from './plan'
import { assertNewCircuit, assertNewFeature, withCircuit, withLine } from './with-feature'

/** A way between two stations: its bends, and how each leg is laid, one more than there are bends. */
export interface Way {
  readonly bends: readonly Position[]
  readonly lays: readonly Lay[]
}

/** Leads a line another way. What single legs said of themselves is gone with them. */
export function rerouteLine(plan: Plan, id: LineId, way: Way): Plan {
  const line = plan.lines.get(id)
  return line ? withLine(plan, { ...line, ...drawn(way) }) : plan
}

/** A line of a net that is to be drawn. */
export interface NetLine extends Way {
  readonly id: LineId
  readonly from: StationId
  readonly to: StationId
}

/**
 * Draws every line of a net, of one wire, and one circuit over them all. Telephones and the supply are those of the circuit that
 * it stands in for, where one is given: that circuit keeps its name and gives up its own lines, which stay drawn.
 */
export function drawNet(
  plan: Plan,
  lines: readonly NetLine[],
  wire: string,
  circuit: Pick<Circuit, 'id' | 'name'> & Partial<Circuit>,
): Plan {
  if (!plan.circuits.has(circuit.id)) assertNewCircuit(plan, circuit.id)
  const withLines = lines.reduce((before, { id, from, to, ...way }) => {
    assertNewFeature(before, id)
    return withLine(before, { id, from, to, ...drawn(way), wire, pairs: 1, return: 'pair' })
  }, plan)
  const blank = { sets: new Map<StationId, string>(), supply: null }
  return withCircuit(withLines, { ...blank, ...circuit, lines: lines.map(({ id }) => id) })
}

function drawn({ bends, lays }: Way): Pick<Line, 'bends' | 'legs'> {
  if (lays.length !== bends.length + 1) throw new Error(`${bends.length} bends make no ${lays.length} legs`)
  return { bends: bends.map(onGlobe), legs: lays.map((lay) => ({ lay })) }
}
