import { memoryOfEach } from '../../memo'
import { endsOf, type Line, type Plan, verticesOf } from '../../plan/plan'
import type { DrawBox, MapView, Point } from './map-view'

/** A line shows its bends from so much room on, px from one to the next on average: closer, no hand could tell them apart. */
const LEAST_BEND_PX = 24

const paths = memoryOfEach<Line, readonly Point[]>()
const boxes = memoryOfEach<readonly Point[], DrawBox>()

/** A line's way on the screen, its two stations included: the same list until the line or the map is another. */
export const pathOfLine = (view: MapView, plan: Plan, line: Line): readonly Point[] =>
  paths(line, [view, view.frame.peek(), ...endsOf(plan, line)], () => view.pathOf(verticesOf(plan, line)))

/** The rectangle around a path, px. */
export const boundsOf = (path: readonly Point[]): DrawBox =>
  boxes(path, [], () => {
    const min = { x: Infinity, y: Infinity }
    const max = { x: -Infinity, y: -Infinity }
    for (const { x, y } of path) {
      if (x < min.x) min.x = x
      if (y < min.y) min.y = y
      if (x > max.x) max.x = x
      if (y > max.y) max.y = y
    }
    return { min, max }
  })

/** Whether two rectangles meet. */
export const meets = (a: DrawBox, b: DrawBox): boolean =>
  a.min.x <= b.max.x && b.min.x <= a.max.x && a.min.y <= b.max.y && b.min.y <= a.max.y

export const isIn = ({ min, max }: DrawBox, { x, y }: Point): boolean =>
  x >= min.x && x <= max.x && y >= min.y && y <= max.y

const rooms = memoryOfEach<readonly Point[], boolean>()

/** Whether a line that is not selected has room for its bends. */
export const hasRoomForBends = (path: readonly Point[]): boolean =>
  rooms(path, [], () => {
    const legsPx = path.slice(1).map((to, i) => Math.hypot(to.x - path[i]!.x, to.y - path[i]!.y))
    return legsPx.reduce((sum, px) => sum + px, 0) >= LEAST_BEND_PX * legsPx.length
  })
