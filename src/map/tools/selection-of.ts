import type { Selection } from '../../state/store'
import type { Here } from './whats-here'

/** What a click selects. A click that adds picks legs of the same line together, and picks one again to let it go. */
export function selectionOf(found: Here, before: Selection): Selection {
  switch (found?.kind) {
    case 'station':
      return { kind: 'station', id: found.id }
    case 'bend':
      return { kind: 'line', id: found.line, legs: [] }
    case 'leg': {
      if (before?.kind !== 'line' || before.id !== found.line)
        return { kind: 'line', id: found.line, legs: [found.leg] }
      const legs = before.legs.includes(found.leg)
        ? before.legs.filter((leg) => leg !== found.leg)
        : [...before.legs, found.leg].sort((a, b) => a - b)
      return { kind: 'line', id: found.line, legs }
    }
    case 'corner':
      return { kind: 'hazard', id: found.hazard }
    case 'hazard':
      return { kind: 'hazard', id: found.id }
    default:
      return before
  }
}
