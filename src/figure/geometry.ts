/** A point of a drawing: so far from its left and from its top, mm on paper, px on the screen. */
export type Point = readonly [x: number, y: number]
export type Segment = readonly [from: Point, to: Point]

/** An upright rectangle of a drawing. */
export interface Box {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

export const boxAround = ([x, y]: Point, widthMm: number, heightMm: number): Box => ({
  left: x - widthMm / 2,
  top: y - heightMm / 2,
  right: x + widthMm / 2,
  bottom: y + heightMm / 2,
})

/** The least box about points. */
export function boxOver(points: readonly Point[]): Box {
  const box = {
    left: Number.POSITIVE_INFINITY,
    top: Number.POSITIVE_INFINITY,
    right: Number.NEGATIVE_INFINITY,
    bottom: Number.NEGATIVE_INFINITY,
  }
  for (const [x, y] of points) {
    box.left = Math.min(box.left, x)
    box.right = Math.max(box.right, x)
    box.top = Math.min(box.top, y)
    box.bottom = Math.max(box.bottom, y)
  }
  return box
}

export const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom

export const within = (inner: Box, outer: Box): boolean =>
  inner.left >= outer.left &&
  inner.top >= outer.top &&
  inner.right <= outer.right &&
  inner.bottom <= outer.bottom

export const contains = (box: Box, [x, y]: Point): boolean =>
  x >= box.left && x <= box.right && y >= box.top && y <= box.bottom

/**
 * The part of a segment that lies in a box, or undefined where none does.
 * Source: Y.-D. Liang and B. A. Barsky, A New Concept and Method for Line Clipping, ACM TOG 3 (1984).
 */
export function clipSegment([[x0, y0], [x1, y1]]: Segment, box: Box): Segment | undefined {
  // Most segments that are asked for lie wholly to one side.
  if (x0 < box.left ? x1 < box.left : x0 > box.right && x1 > box.right) return undefined
  if (y0 < box.top ? y1 < box.top : y0 > box.bottom && y1 > box.bottom) return undefined
  const dx = x1 - x0
  const dy = y1 - y0
  let start = 0
  let end = 1
  const edges = [
    [-dx, x0 - box.left],
    [dx, box.right - x0],
    [-dy, y0 - box.top],
    [dy, box.bottom - y0],
  ] as const
  for (const [step, room] of edges) {
    if (step === 0) {
      if (room < 0) return undefined
      continue
    }
    const at = room / step
    if (step < 0) start = Math.max(start, at)
    else end = Math.min(end, at)
    if (start > end) return undefined
  }
  return [
    [x0 + start * dx, y0 + start * dy],
    [x0 + end * dx, y0 + end * dy],
  ]
}

export const lengthOf = ([[x0, y0], [x1, y1]]: Segment): number => Math.hypot(x1 - x0, y1 - y0)

const side = ([ax, ay]: Point, [bx, by]: Point, [px, py]: Point) =>
  Math.sign((bx - ax) * (py - ay) - (by - ay) * (px - ax))

/** True where two segments cross each other at a point within both; touching ends do not count. */
export const cross = (a: Segment, b: Segment): boolean =>
  side(a[0], a[1], b[0]) * side(a[0], a[1], b[1]) < 0 && side(b[0], b[1], a[0]) * side(b[0], b[1], a[1]) < 0

export const segmentsOf = (points: readonly Point[]): readonly Segment[] =>
  points.slice(1).map((point, i) => [points[i]!, point] as const)
