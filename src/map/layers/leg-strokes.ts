import { clipSegment } from '../../figure/geometry'
import type { Lay } from '../../plan/plan'
import type { DrawBox, Point } from '../view/map-view'
import { pathData } from '../view/path-data'

/** Path data of one leg as it is drawn: the wire, and the ticks across an overhead one. Empty where nothing is in the box. */
export interface LegStrokes {
  readonly wire: string
  readonly ticks: string
}

const TICK_EVERY_PX = 34
const TICK_HALF_PX = 6
/** On shorter legs a tick would be mistaken for a leg of its own, px. */
const LEAST_TICKED_PX = 8

const NOTHING: LegStrokes = { wire: '', ticks: '' }

/** The part of a straight stretch that lies in a box. */
export function seenPart(from: Point, to: Point, { min, max }: DrawBox): readonly [Point, Point] | undefined {
  const part = clipSegment(
    [
      [from.x, from.y],
      [to.x, to.y],
    ],
    { left: min.x, top: min.y, right: max.x, bottom: max.y },
  )
  if (!part) return undefined
  const [start, end] = part.map(([x, y]) => ({ x, y }))
  return [start!, end!]
}

/** Draws a leg as far as it lies in the box: what a browser need not dash and stroke far outside the screen costs nothing. */
export function legStrokes(from: Point, to: Point, lay: Lay, box: DrawBox): LegStrokes {
  const seen = seenPart(from, to, box)
  if (!seen) return NOTHING
  const [start, end] = seen
  return { wire: pathData([start, end]), ticks: lay === 'overhead' ? ticksAlong(from, to, start, end) : '' }
}

/** Ticks keep their places on the leg, whatever part of it is seen. */
function ticksAlong(from: Point, to: Point, start: Point, end: Point): string {
  const lengthPx = Math.hypot(to.x - from.x, to.y - from.y)
  if (lengthPx < LEAST_TICKED_PX) return ''
  const along = { x: (to.x - from.x) / lengthPx, y: (to.y - from.y) / lengthPx }
  const startPx = Math.hypot(start.x - from.x, start.y - from.y)
  const endPx = Math.hypot(end.x - from.x, end.y - from.y)
  const count = Math.max(1, Math.round(lengthPx / TICK_EVERY_PX))
  const everyPx = lengthPx / count
  const ticks: string[] = []
  for (let k = Math.max(0, Math.floor(startPx / everyPx - 0.5)); k < count; k++) {
    const px = (k + 0.5) * everyPx
    if (px > endPx) break
    const middle = { x: from.x + along.x * px, y: from.y + along.y * px }
    const across = { x: -along.y * TICK_HALF_PX, y: along.x * TICK_HALF_PX }
    ticks.push(
      pathData([
        { x: middle.x - across.x, y: middle.y - across.y },
        { x: middle.x + across.x, y: middle.y + across.y },
      ]),
    )
  }
  return ticks.join('')
}
