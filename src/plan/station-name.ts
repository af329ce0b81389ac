import type { Plan } from './plan'

/** The first of `Station 1`, `Station 2`… that no station bears. */
export function freeStationName(plan: Plan): string {
  const taken = new Set([...plan.stations.values()].map(({ name }) => name))
  let count = 1
  while (taken.has(`Station ${count}`)) count++
  return `Station ${count}`
}
