import type { CircuitId, HazardId, LineId, StationId } from '../plan/id'
import type { Plan } from '../plan/plan'
import type { Several } from '../plan/several-edits'

export type Selection =
  | { readonly kind: 'station'; readonly id: StationId }
  /** `legs`: indices of the legs picked on the line; empty means the line as a whole. */
  | { readonly kind: 'line'; readonly id: LineId; readonly legs: readonly number[] }
  | { readonly kind: 'circuit'; readonly id: CircuitId }
  | { readonly kind: 'hazard'; readonly id: HazardId }
  /** Stations and lines handled together, two at least. */
  | ({ readonly kind: 'several'; readonly id: 'several' } & Several)
  | null

/** Whether what is selected is on a plan. */
export function isOn(plan: Plan, selection: Selection): boolean {
  switch (selection?.kind) {
    case 'station':
      return plan.stations.has(selection.id)
    case 'line':
      return plan.lines.has(selection.id)
    case 'circuit':
      return plan.circuits.has(selection.id)
    case 'hazard':
      return plan.hazards.has(selection.id)
    case 'several':
      return (
        selection.stations.every((id) => plan.stations.has(id)) &&
        selection.lines.every((id) => plan.lines.has(id))
      )
    case undefined:
      return true
  }
}
