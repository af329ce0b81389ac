import type { CircuitId, StationId } from './id'
import { withoutLines } from './line-removal'
import type { Circuit, Plan } from './plan'
import { drawNet, type NetLine } from './route-edits'

/**
 * Draws a net for a circuit, or for a new one. The circuit's own lines go, but for those that carry another circuit; each of
 * the net's stations keeps the telephone that it has, be it on this circuit or on another.
 */
export function replaceNet(
  plan: Plan,
  lines: readonly NetLine[],
  wire: string,
  circuit: { readonly id: CircuitId; readonly name: string },
): Plan {
  const before = plan.circuits.get(circuit.id)
  const stations = new Set(lines.flatMap(({ from, to }) => [from, to]))
  const sets = new Map<StationId, string>()
  for (const each of before ? [before, ...plan.circuits.values()] : plan.circuits.values()) {
    for (const [station, set] of each.sets) {
      if (stations.has(station) && !sets.has(station)) sets.set(station, set)
    }
  }
  const supply = before?.supply && stations.has(before.supply.at) ? before.supply : null
  const drawn = drawNet(plan, lines, wire, { ...(before ?? circuit), sets, supply })
  const carries = (id: Circuit['lines'][number]) =>
    [...drawn.circuits.values()].some((each) => each.lines.includes(id))
  return withoutLines(drawn, new Set(before?.lines.filter((id) => !carries(id))))
}
