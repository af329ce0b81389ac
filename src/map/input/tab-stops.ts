import type { Position } from '../../geo/position'
import type { Plan } from '../../plan/plan'
import type { Selection } from '../../state/selection'
import type { Bench } from '../bench'
import { describe } from '../tools/describe'
import { pick } from '../tools/pick'
import { outlineOf } from '../tools/scene'
import type { Here } from '../tools/whats-here'
import type { Crosshair } from './crosshair'

interface Stop {
  readonly thing: NonNullable<Here>
  readonly position: Position
}

/** Everything that the Tab key stops at, in order: stations, each line's bends, hazards, and the corners of the selected one. */
export const stopsOf = (plan: Plan, selection: Selection): readonly Stop[] => [
  ...[...plan.stations.values()].map(({ id, position }) => ({
    thing: { kind: 'station' as const, id },
    position,
  })),
  ...[...plan.lines.values()].flatMap((line) =>
    line.bends.map((position, index) => ({
      thing: { kind: 'bend' as const, line: line.id, index },
      position,
    })),
  ),
  ...[...plan.hazards.values()].flatMap((hazard) => {
    const outline = outlineOf(hazard)
    const corners = outline.map((position, index) => ({
      thing: { kind: 'corner' as const, hazard: hazard.id, index },
      position,
    }))
    const selected = selection?.kind === 'hazard' && selection.id === hazard.id
    return [
      { thing: { kind: 'hazard' as const, id: hazard.id }, position: outline[0]! },
      ...(selected ? corners : []),
    ]
  }),
]

/** Walks the stops. Past the last, or after Escape, Tab leaves the map as it leaves any other field. */
export function tabStops(bench: Bench, crosshair: Crosshair) {
  let leaving = false
  let last: string | null = null
  return {
    stay: () => {
      leaving = false
    },
    leave: () => {
      leaving = true
      last = null
    },
    go: (by: 1 | -1): boolean => {
      const plan = bench.store.plan.peek()
      const stops = stopsOf(plan, bench.store.selection.peek())
      const at = stops.findIndex(({ thing }) => JSON.stringify(thing) === last)
      const next = at < 0 ? (by > 0 ? 0 : stops.length - 1) : at + by
      const stop = stops[next]
      if (leaving || !stop) {
        leaving = false
        last = null
        return false
      }
      last = JSON.stringify(stop.thing)
      const { thing } = stop
      pick(bench, thing)
      crosshair.goTo(stop.position)
      bench.say(describe(plan, thing))
      return true
    },
  }
}
