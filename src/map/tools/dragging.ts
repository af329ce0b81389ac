import type { Position } from '../../geo/position'
import { moveHazardVertex } from '../../plan/hazard-edits'
import { insertBend, moveBend } from '../../plan/leg-edits'
import type { Plan } from '../../plan/plan'
import { moveStation } from '../../plan/station-edits'
import type { Aim, Bench, Hold } from '../bench'
import type { Here } from './whats-here'

/** The edit that a drag from here makes, given where the pointer has come to. */
export type Move = (plan: Plan, to: Position) => Plan

export function dragOf(found: Here): Move | null {
  switch (found?.kind) {
    case 'station':
      return (plan, to) => moveStation(plan, found.id, to)
    case 'bend':
      return (plan, to) => moveBend(plan, found.line, found.index, to)
    case 'leg':
      return (plan, to) => insertBend(plan, found.line, found.leg, to)
    case 'corner':
      return (plan, to) => moveHazardVertex(plan, found.hazard, found.index, to)
    default:
      return null
  }
}

/** Where a thing that can be dragged stands, so that it does not jump to the pointer; a leg bends at the pointer. */
function anchorOf(bench: Bench, found: Here, aim: Aim) {
  const { view, store } = bench
  const plan = store.plan.peek()
  if (found?.kind === 'station') return view.pointOf(plan.stations.get(found.id)!.position)
  if (found?.kind === 'bend') return view.pointOf(plan.lines.get(found.line)!.bends[found.index]!)
  return aim.point
}

/** Previews the drag at every move; one undo step when it is dropped. */
export function dragging(bench: Bench, found: Here, start: Aim, move: Move, begin: () => void): Hold {
  const { store, view } = bench
  const anchor = anchorOf(bench, found, start)
  let begun = false
  return {
    move: ({ point }) => {
      if (!begun) begin()
      begun = true
      const to = { x: anchor.x + point.x - start.point.x, y: anchor.y + point.y - start.point.y }
      store.preview((plan) => move(plan, view.positionOf(to)))
    },
    drop: () => {
      store.settle()
      bench.say('Moved')
    },
    letGo: () => {
      if (begun) store.cancel()
    },
  }
}
