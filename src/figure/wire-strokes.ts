import { type Box, clipSegment, type Point, type Segment, segmentsOf } from './geometry'

const TICK_STEP_MM = 4.5
const TICK_MM = 2.2

/** The point a part 0…1 of the way from one point to another. */
export const between = ([x0, y0]: Point, [x1, y1]: Point, part: number): Point => [
  x0 + (x1 - x0) * part,
  y0 + (y1 - y0) * part,
]

/** Short strokes across an overhead leg. */
export function crossTicks([from, to]: Segment): readonly Segment[] {
  const lengthMm = Math.hypot(to[0] - from[0], to[1] - from[1])
  if (lengthMm === 0) return []
  const count = Math.max(1, Math.floor(lengthMm / TICK_STEP_MM))
  const dx = ((from[1] - to[1]) / lengthMm) * (TICK_MM / 2)
  const dy = ((to[0] - from[0]) / lengthMm) * (TICK_MM / 2)
  return Array.from({ length: count }, (_, i) => {
    const [x, y] = between(from, to, (i + 0.5) / count)
    return [
      [x - dx, y - dy],
      [x + dx, y + dy],
    ] as const
  })
}

/** The middle, by length, of what of a way lies in the frame; undefined where none does. */
export function middleInside(points: readonly Point[], frame: Box): Point | undefined {
  const inside = segmentsOf(points).flatMap((segment) => {
    const clipped = clipSegment(segment, frame)
    return clipped ? [clipped] : []
  })
  const lengths = inside.map(([a, b]) => Math.hypot(b[0] - a[0], b[1] - a[1]))
  let rest = lengths.reduce((sum, length) => sum + length, 0) / 2
  for (const [i, length] of lengths.entries()) {
    if (rest <= length && length > 0) return between(...inside[i]!, rest / length)
    rest -= length
  }
  return undefined
}
