import { planeAbout } from '../geo/plane'
import type { Position } from '../geo/position'
import { type Line, type Plan, vertexOf } from '../plan/plan'
import type { MeasuredLine } from './measured'

/** The place of a line that lies nearest to somewhere. */
export interface NearestOnLine {
  /** Running distance along the ground from the line's `from`, m. */
  readonly groundM: number
  /** From there to the line, m on the map. */
  readonly offM: number
}

/** The place of a line that lies nearest to a position, on a flat picture of the ground about it. */
export function nearestOnLine(
  plan: Plan,
  measured: MeasuredLine,
  line: Line,
  position: Position,
): NearestOnLine {
  const plane = planeAbout([position])
  let best: NearestOnLine = { groundM: 0, offM: Number.POSITIVE_INFINITY }
  let runM = 0
  for (const [i, leg] of measured.legs.entries()) {
    const [ax, ay] = plane.toPlane(vertexOf(plan, line, i))
    const [bx, by] = plane.toPlane(vertexOf(plan, line, i + 1))
    const [dx, dy] = [bx - ax, by - ay]
    const along = Math.min(1, Math.max(0, -(ax * dx + ay * dy) / (dx * dx + dy * dy || 1)))
    const offM = Math.hypot(ax + along * dx, ay + along * dy)
    if (offM < best.offM) best = { groundM: runM + along * leg.groundM, offM }
    runM += leg.groundM
  }
  return best
}
