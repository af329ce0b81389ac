import { HAZARDS } from '../../hazard/kinds'
import { isolated } from '../../isolated'
import type { HazardId, LineId, StationId } from '../../plan/id'
import { lineName, type Plan, stationName } from '../../plan/plan'
import { LAY_WORDS } from '../../words/plan-words'
import type { Here } from './whats-here'

/** A thing on the map in a few words, for those who hear it. */
export function describe(plan: Plan, found: Here): string {
  switch (found?.kind) {
    case 'station':
      return stationWords(plan, found.id)
    case 'bend':
      return `Bend ${found.index + 1} of line ${lineWords(plan, found.line)}`
    case 'leg':
      return legWords(plan, found.line, found.leg)
    case 'corner':
      return `Corner ${found.index + 1} of ${hazardWords(plan, found.hazard)}`
    case 'hazard':
      return hazardWords(plan, found.id)
    default:
      return ''
  }
}

/** `Station Ford`; a name that says so itself needs no second word. */
export function stationWords(plan: Plan, id: StationId): string {
  const name = stationName(plan, id)
  return name.startsWith('Station ') ? name : `Station ${name}`
}

function lineWords(plan: Plan, id: LineId): string {
  const line = plan.lines.get(id)
  return line ? lineName(plan, line) : ''
}

function legWords(plan: Plan, id: LineId, leg: number): string {
  const lay = plan.lines.get(id)?.legs[leg]?.lay
  return `Leg ${leg + 1} of line ${lineWords(plan, id)}${lay ? `, ${LAY_WORDS[lay]}` : ''}`
}

function hazardWords(plan: Plan, id: HazardId): string {
  const hazard = plan.hazards.get(id)
  return hazard ? [HAZARDS[hazard.hazard].word, isolated(hazard.name)].filter(Boolean).join(' ') : ''
}
