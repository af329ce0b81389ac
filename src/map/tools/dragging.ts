import { legGeometry } from '../../geo/leg-length'
import type { Position } from '../../geo/position'
import { moveHazardVertex } from '../../plan/hazard-edits'
import { insertBend, moveBend } from '../../plan/leg-edits'
import type { Plan } from '../../plan/plan'
import { moveSeveral, type Several } from '../../plan/several-edits'
import { moveStation } from '../../plan/station-edits'
import type { Aim, Bench, Hold } from '../bench'
import { describe } from './describe'
import { outlineOf } from './scene'
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
  const place = placeOf(bench.store.plan.peek(), found)
  return place ? bench.view.pointOf(place) : aim.point
}

/** Moves all that is selected together, when one of them is dragged from its place. */
export function moveOfSeveral({ view }: Bench, several: Several, anchor: Position): Move {
  return (plan, to) => {
    const [from, now] = [view.pointOf(anchor), view.pointOf(to)]
    const step = (position: Position): Position => {
      const { x, y } = view.pointOf(position)
      return view.positionOf({ x: x + now.x - from.x, y: y + now.y - from.y })
    }
    return moveSeveral(plan, several, step)
  }
}

/** Keeps what was moved, and tells what it was and how far it went. */
export function settleMove({ store }: Bench, found: Here): void {
  const before = store.settled.peek()
  store.settle()
  const after = store.settled.peek()
  if (after === before) return
  const what = describe(before, found)
  const [from, to] = [placeOf(before, found), placeOf(after, found)]
  const far = from && to ? ` ${store.tongue.peek().run(legGeometry(from, to).mapM)}` : ''
  const selection = store.selection.peek()
  if (selection?.kind === 'several') {
    const count = selection.stations.length + selection.lines.length
    store.tell(`${count} things moved${far}`)
  } else store.tell(found?.kind === 'leg' ? `${what}: bent` : `${what} moved${far}`)
}

/** Where a thing that is dragged stands; a leg stands nowhere. */
export function placeOf(plan: Plan, found: Here): Position | undefined {
  if (found?.kind === 'station') return plan.stations.get(found.id)?.position
  if (found?.kind === 'bend') return plan.lines.get(found.line)?.bends[found.index]
  const hazard = found?.kind === 'corner' && plan.hazards.get(found.hazard)
  return hazard ? outlineOf(hazard)[found.index] : undefined
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
    drop: () => settleMove(bench, found),
    letGo: () => {
      if (begun) store.cancel()
    },
  }
}
