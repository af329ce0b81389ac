import type { Bench } from '../bench'
import { dragOf, type Move, moveOfSeveral, placeOf, settleMove } from '../tools/dragging'
import type { Here } from '../tools/whats-here'
import type { Point } from '../view/map-view'

/** Moves the picked bend, or the selected station, by keys: one undo step from the first key to the end. */
export function keyMover(bench: Bench) {
  const { store, view } = bench
  let moving: { move: Move; at: Point; frame: number } | null = null

  const start = (): boolean => {
    if (moving) return true
    if (!bench.store.mayEdit()) return false
    const hand = heldThing(bench)
    const several = bench.store.selection.peek()
    const place = placeOf(bench.store.settled.peek(), hand)
    const move = several?.kind === 'several' && place ? moveOfSeveral(bench, several, place) : dragOf(hand)
    const at = hand && pointOf(bench, hand)
    if (!move || !at) return false
    moving = { move, at, frame: view.frame.peek() }
    bench.say('Arrows move it; Enter keeps, Escape puts it back')
    return true
  }

  return {
    active: () => moving !== null,
    start,
    move: (by: Point): boolean => {
      if (!start() || !moving) return false
      if (moving.frame !== view.frame.peek()) {
        // Zoomed or panned meanwhile: the thing stands elsewhere on the screen.
        const hand = heldThing(bench)
        moving.at = (hand && pointOf(bench, hand)) ?? moving.at
        moving.frame = view.frame.peek()
      }
      const { move } = moving
      const at = { x: moving.at.x + by.x, y: moving.at.y + by.y }
      moving.at = at
      store.preview((plan) => move(plan, view.positionOf(at)))
      return true
    },
    end: (keep: boolean): boolean => {
      if (!moving) return false
      moving = null
      if (keep) settleMove(bench, heldThing(bench))
      else {
        store.cancel()
        bench.say('Put back')
      }
      return true
    },
  }
}

function heldThing({ store, picked }: Bench): Here {
  const hand = picked.peek()
  if (hand) return hand
  const selection = store.selection.peek()
  const id =
    selection?.kind === 'several' ? selection.stations[0] : selection?.kind === 'station' && selection.id
  return id ? { kind: 'station', id } : null
}

function pointOf({ store, view }: Bench, thing: Here): Point | undefined {
  const position = placeOf(store.atHand.peek(), thing)
  return position && view.pointOf(position)
}
