import type { Point } from './map-view'

export type Side = 'above' | 'below' | 'right' | 'left'

/** Directions from a station to the middle of its name, y down, and how welcome each side is, other things being equal. */
const SIDES: readonly {
  readonly side: Side
  readonly x: number
  readonly y: number
  readonly bonus: number
}[] = [
  { side: 'above', x: 0, y: -1, bonus: 0.3 },
  { side: 'below', x: 0, y: 1, bonus: 0.2 },
  { side: 'right', x: 1, y: 0, bonus: 0.1 },
  { side: 'left', x: -1, y: 0, bonus: 0 },
]

/** The side of a station where its name covers its lines least: the one farthest in angle from every line that leaves it. */
export function nameSide(station: Point, neighbours: readonly Point[]): Side {
  const ways = neighbours.map((point) => {
    const dx = point.x - station.x
    const dy = point.y - station.y
    const length = Math.hypot(dx, dy) || 1
    return { x: dx / length, y: dy / length }
  })
  const clearance = (side: Point) =>
    ways.reduce(
      (least, way) => Math.min(least, Math.acos(Math.min(1, Math.max(-1, way.x * side.x + way.y * side.y)))),
      Math.PI,
    )
  return SIDES.map((each) => ({ side: each.side, worth: clearance(each) + each.bonus })).reduce(
    (best, each) => (each.worth > best.worth ? each : best),
  ).side
}
