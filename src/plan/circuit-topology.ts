import type { LineId, StationId } from './id'
import type { Circuit, Line, Plan } from './plan'

type Ends = Pick<Line, 'from' | 'to'>

/** The stations that lines reach, in order of first appearance along them. */
export function stationsOfLines(
  lines: readonly LineId[],
  endsOf: (id: LineId) => Ends | undefined,
): readonly StationId[] {
  const stations = new Set<StationId>()
  for (const id of lines) {
    const line = endsOf(id)
    if (line) stations.add(line.from).add(line.to)
  }
  return [...stations]
}

/** The stations that a circuit reaches, in order of first appearance along its lines. */
export const stationsOfCircuit = (plan: Plan, circuit: Pick<Circuit, 'lines'>): readonly StationId[] =>
  stationsOfLines(circuit.lines, (id) => plan.lines.get(id))

/** The circuits that use a pair of this line, in the plan's order. */
export const circuitsOfLine = (plan: Plan, id: LineId): readonly Circuit[] =>
  [...plan.circuits.values()].filter((circuit) => circuit.lines.includes(id))

/** The circuits that reach this station, in the plan's order. */
export function circuitsAtStation(plan: Plan, id: StationId): readonly Circuit[] {
  const touches = (line: Line | undefined) => line?.from === id || line?.to === id
  return [...plan.circuits.values()].filter((circuit) =>
    circuit.lines.some((lineId) => touches(plan.lines.get(lineId))),
  )
}

/** The pairs of a line that no circuit has for itself; what rides on others takes none. */
export const sparePairs = (plan: Plan, line: Line): number =>
  line.pairs - circuitsOfLine(plan, line.id).filter(({ over }) => !over).length

/** Lines grouped into connected pieces: two lines are of one piece where a way leads from one to the other over stations. */
export function connectedPieces(
  lines: readonly LineId[],
  endsOf: (id: LineId) => Ends | undefined,
): readonly (readonly LineId[])[] {
  const parents = new Map<StationId, StationId>()
  const rootOf = (station: StationId): StationId => {
    let root = station
    for (let up = parents.get(root); up !== undefined && up !== root; up = parents.get(root)) {
      const above = parents.get(up)!
      parents.set(root, above)
      root = above
    }
    return root
  }
  const ends = lines.flatMap((id) => {
    const line = endsOf(id)
    return line ? [{ id, line }] : []
  })
  for (const { line } of ends) {
    for (const station of [line.from, line.to]) if (!parents.has(station)) parents.set(station, station)
    parents.set(rootOf(line.from), rootOf(line.to))
  }
  const pieces = new Map<StationId, LineId[]>()
  for (const { id, line } of ends) {
    const root = rootOf(line.from)
    const piece = pieces.get(root)
    if (piece) piece.push(id)
    else pieces.set(root, [id])
  }
  return [...pieces.values()]
}
