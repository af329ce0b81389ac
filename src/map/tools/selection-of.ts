import type { LineId, StationId } from '../../plan/id'
import type { Selection } from '../../state/selection'
import type { Here } from './whats-here'

/**
 * What a click selects. A click that adds picks legs of the same line together, and stations and lines with each other; picked again, one
 * is let go.
 */
export function selectionOf(found: Here, before: Selection): Selection {
  switch (found?.kind) {
    case 'station':
      return before && isOfNet(before)
        ? toggled(before, { stations: [found.id], lines: [] })
        : { kind: 'station', id: found.id }
    case 'bend':
      return { kind: 'line', id: found.line, legs: [] }
    case 'leg': {
      if (before?.kind === 'line' && before.id === found.line) {
        const legs = before.legs.includes(found.leg)
          ? before.legs.filter((leg) => leg !== found.leg)
          : [...before.legs, found.leg].sort((a, b) => a - b)
        return { kind: 'line', id: found.line, legs }
      }
      return before && isOfNet(before)
        ? toggled(before, { stations: [], lines: [found.line] })
        : { kind: 'line', id: found.line, legs: [found.leg] }
    }
    case 'corner':
      return { kind: 'hazard', id: found.hazard }
    case 'hazard':
      return { kind: 'hazard', id: found.id }
    default:
      return before
  }
}

interface Members {
  readonly stations: readonly StationId[]
  readonly lines: readonly LineId[]
}

/** Stations and lines as one selection: of one alone, that one. */
export function selectionOfMembers({ stations, lines }: Members): Selection {
  if (stations.length + lines.length > 1) return { kind: 'several', id: 'several', stations, lines }
  if (stations[0]) return { kind: 'station', id: stations[0] }
  return lines[0] ? { kind: 'line', id: lines[0], legs: [] } : null
}

type OfNet = Extract<Selection, { readonly kind: 'station' | 'line' | 'several' }>

const isOfNet = (selection: NonNullable<Selection>): selection is OfNet =>
  selection.kind === 'station' || selection.kind === 'line' || selection.kind === 'several'

function membersOf(selection: OfNet): Members {
  if (selection.kind === 'several') return selection
  return selection.kind === 'station'
    ? { stations: [selection.id], lines: [] }
    : { stations: [], lines: [selection.id] }
}

function toggled(before: OfNet, { stations, lines }: Members): Selection {
  const had = membersOf(before)
  return selectionOfMembers({
    stations: without(had.stations, stations),
    lines: without(had.lines, lines),
  })
}

const without = <T>(had: readonly T[], toggle: readonly T[]): readonly T[] => [
  ...had.filter((each) => !toggle.includes(each)),
  ...toggle.filter((each) => !had.includes(each)),
]
