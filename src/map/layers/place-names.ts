import type { Point } from '../view/map-view'

/** A rectangle on the screen, px. */
export interface Box {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** The rectangle of a size around its middle. */
export const around = ({ x, y }: Point, width: number, height: number): Box => ({
  left: x - width / 2,
  right: x + width / 2,
  top: y - height / 2,
  bottom: y + height / 2,
})

/** A name that looks for a place: its candidates from the most to the least welcome. */
export interface NameToPlace {
  readonly id: string
  readonly candidates: readonly Box[]
}

export interface Stretch {
  readonly from: Point
  readonly to: Point
}

/** What it costs to be cut off by the edge of the screen, to be crossed by wire, and to be one candidate less welcome. */
const COST = { cutOff: 12, crossed: 3, later: 1 }
/** More comparisons than this would be felt in a drag; then wires are not looked at. */
const MOST_COMPARISONS = 300_000

/**
 * For each name the index of its best candidate: first come, first placed. A name that would cover another, or a symbol,
 * wherever it stood is left out: nearer, there is room for it.
 */
export function placeNames(
  names: readonly NameToPlace[],
  obstacles: readonly Box[],
  wires: readonly Stretch[],
  screen?: Box,
): ReadonlyMap<string, number> {
  const taken = boxIndex(obstacles)
  const looked = names.length * wires.length * 4 > MOST_COMPARISONS ? [] : wires
  const chosen = new Map<string, number>()
  for (const { id, candidates } of names) {
    let best = -1
    let least = Number.POSITIVE_INFINITY
    for (const [index, box] of candidates.entries()) {
      if (index * COST.later >= least || taken.isTaken(box)) continue
      let cost = index * COST.later
      if (screen && overlap(box, screen) && !holds(screen, box)) cost += COST.cutOff
      for (const wire of looked) if (crosses(wire, box)) cost += COST.crossed
      if (cost >= least) continue
      least = cost
      best = index
    }
    const place = candidates[best]
    if (!place) continue
    chosen.set(id, best)
    taken.add(place)
  }
  return chosen
}

/** A side of the squares by which boxes are found again, px: about as wide as a name. */
const SQUARE_PX = 80

/** Boxes by the squares that they touch, so that each looks only at its neighbours. */
function boxIndex(boxes: readonly Box[]) {
  const squares = new Map<string, Box[]>()
  const keysOf = ({ left, top, right, bottom }: Box): string[] => {
    const keys: string[] = []
    for (let column = Math.floor(left / SQUARE_PX); column <= right / SQUARE_PX; column++)
      for (let row = Math.floor(top / SQUARE_PX); row <= bottom / SQUARE_PX; row++)
        keys.push(`${column} ${row}`)
    return keys
  }
  const add = (box: Box) => {
    for (const key of keysOf(box)) {
      const square = squares.get(key)
      if (square) square.push(box)
      else squares.set(key, [box])
    }
  }
  const isTaken = (box: Box) =>
    keysOf(box).some((key) => squares.get(key)?.some((other) => overlap(box, other)))
  for (const box of boxes) add(box)
  return { add, isTaken }
}

const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom

const holds = (outer: Box, inner: Box): boolean =>
  outer.left <= inner.left &&
  outer.top <= inner.top &&
  inner.right <= outer.right &&
  inner.bottom <= outer.bottom

/** Whether a straight stretch meets a rectangle. */
export function crosses({ from, to }: Stretch, box: Box): boolean {
  if (Math.max(from.x, to.x) < box.left || Math.min(from.x, to.x) > box.right) return false
  if (Math.max(from.y, to.y) < box.top || Math.min(from.y, to.y) > box.bottom) return false
  // Their spans overlap: they meet unless all four corners lie on one side of the stretch.
  const dx = to.x - from.x
  const dy = to.y - from.y
  const side = (x: number, y: number) => Math.sign(dx * (y - from.y) - dy * (x - from.x))
  const first = side(box.left, box.top)
  return (
    first === 0 ||
    side(box.right, box.top) !== first ||
    side(box.left, box.bottom) !== first ||
    side(box.right, box.bottom) !== first
  )
}
