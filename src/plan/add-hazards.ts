import type { Hazard, Plan } from './plan'
import { assertNewFeature } from './put'

/** Adds many hazards at once: one edit, however many there are. */
export function addHazards(plan: Plan, added: readonly Hazard[]): Plan {
  if (added.length === 0) return plan
  const hazards = new Map(plan.hazards)
  for (const hazard of added) {
    assertNewFeature(plan, hazard.id)
    if (hazards.has(hazard.id)) throw new Error(`two new hazards have the id "${hazard.id}"`)
    hazards.set(hazard.id, hazard)
  }
  return { ...plan, hazards }
}
