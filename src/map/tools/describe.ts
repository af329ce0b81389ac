import type { LineId } from '../../plan/id'
import { lineName, type Plan } from '../../plan/plan'
import type { Here } from './whats-here'

/** A thing on the map in a few words, for those who hear it. */
export function describe(plan: Plan, found: Here): string {
  switch (found?.kind) {
    case 'station':
      return `Station ${plan.stations.get(found.id)?.name ?? ''}`
    case 'bend':
      return `Bend ${found.index + 1} of line ${lineWords(plan, found.line)}`
    case 'leg':
      return `Leg ${found.leg + 1} of line ${lineWords(plan, found.line)}, ${plan.lines.get(found.line)?.legs[found.leg]?.lay ?? ''}`
    case 'corner':
      return `Corner ${found.index + 1} of a hazard`
    case 'hazard':
      return `Hazard ${plan.hazards.get(found.id)?.name || (plan.hazards.get(found.id)?.hazard ?? '')}`
    default:
      return ''
  }
}

function lineWords(plan: Plan, id: LineId): string {
  const line = plan.lines.get(id)
  return line ? lineName(plan, line) : ''
}
