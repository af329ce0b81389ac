import type { CircuitId, HazardId, LineId, StationId } from './id'
import type { Circuit, Hazard, Line, Plan, Station } from './plan'

/** The plan with one thing added, or in place of the one that had its id. */
export const withStation = (plan: Plan, station: Station): Plan => ({
  ...plan,
  stations: new Map(plan.stations).set(station.id, station),
})

export const withLine = (plan: Plan, line: Line): Plan => ({
  ...plan,
  lines: new Map(plan.lines).set(line.id, line),
})

export const withHazard = (plan: Plan, hazard: Hazard): Plan => ({
  ...plan,
  hazards: new Map(plan.hazards).set(hazard.id, hazard),
})

export const withCircuit = (plan: Plan, circuit: Circuit): Plan => ({
  ...plan,
  circuits: new Map(plan.circuits).set(circuit.id, circuit),
})

/** A map without some of its entries. */
export const without = <K, V>(map: ReadonlyMap<K, V>, gone: ReadonlySet<K>): ReadonlyMap<K, V> =>
  new Map([...map].filter(([key]) => !gone.has(key)))

/** Throws where a feature of the plan has this id already: whoever makes ids must make new ones. */
export function assertNewFeature(plan: Plan, id: StationId | LineId | HazardId): void {
  const taken = [plan.stations, plan.lines, plan.hazards].some((map: ReadonlyMap<string, unknown>) =>
    map.has(id),
  )
  const foreign = plan.unknown?.features?.some((feature) => (feature as { id?: unknown }).id === id)
  if (taken || foreign || id === '') throw new Error(`the plan has a feature "${id}" already`)
}

/** The same for circuits. */
export function assertNewCircuit(plan: Plan, id: CircuitId): void {
  if (plan.circuits.has(id) || id === '') throw new Error(`the plan has a circuit "${id}" already`)
}
