import type { Plan } from '../plan/plan'

/** A plan's own stations, hazards, weather and words with the lines, circuits, stock and entries of a net between them. */
export function netOntoPlan(plan: Plan, net: Plan): Plan {
  const joined = <T extends { readonly id: string }>(own: readonly T[], others: readonly T[]) => [
    ...own,
    ...others.filter(({ id }) => !own.some((each) => each.id === id)),
  ]
  return {
    ...plan,
    stations: new Map([...net.stations, ...plan.stations]),
    lines: net.lines,
    circuits: net.circuits,
    stock: net.stock,
    // With these its wire was reckoned.
    allowances: net.allowances,
    catalog: {
      wires: joined(plan.catalog.wires, net.catalog.wires),
      sets: joined(plan.catalog.sets, net.catalog.sets),
      supplies: joined(plan.catalog.supplies, net.catalog.supplies),
    },
  }
}
