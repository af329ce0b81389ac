import type { Box, Point, Segment } from '../../figure/geometry'
import { fittingScale } from '../../figure/map-scale'
import type { Plane, PlanePoint } from '../../geo/plane'
import type { Position } from '../../geo/position'
import { spanOf } from '../../geo/span'
import type { Extent as GroundExtent } from '../../terrain/elevation-grid'

/** A piece of ground as it lies in a frame on paper, true north up. */
export interface MapWindow {
  readonly plane: Plane
  /** Point of the plane in the middle of the frame. */
  readonly middle: PlanePoint
  /** N of the scale 1 : N. */
  readonly scale: number
  readonly frame: Box
}

/** Ground kept free inside the frame, so that names at the edge find room, mm. */
export const EDGE_MM = 13

const middleOf = (frame: Box): Point => [(frame.left + frame.right) / 2, (frame.top + frame.bottom) / 2]

export function toPaper(window: MapWindow, position: Position): Point {
  const [eastM, northM] = window.plane.toPlane(position)
  return planeToPaper(window, [eastM, northM])
}

/** The ground in the frame. The plane is even in longitude and latitude, and so is the frame. */
export function groundIn(window: MapWindow): GroundExtent {
  const { left, right, top, bottom } = window.frame
  const place = (x: number, y: number) => window.plane.toPosition(paperToPlane(window, [x, y]))
  const [westDeg, northDeg] = place(left, top)
  const [eastDeg, southDeg] = place(right, bottom)
  return { westDeg, southDeg, eastDeg: eastDeg < westDeg ? eastDeg + 360 : eastDeg, northDeg }
}

export function planeToPaper({ middle, scale, frame }: MapWindow, [eastM, northM]: PlanePoint): Point {
  const [x, y] = middleOf(frame)
  return [x + ((eastM - middle[0]) * 1000) / scale, y - ((northM - middle[1]) * 1000) / scale]
}

export function paperToPlane({ middle, scale, frame }: MapWindow, [x, y]: Point): PlanePoint {
  const [x0, y0] = middleOf(frame)
  return [middle[0] + ((x - x0) * scale) / 1000, middle[1] - ((y - y0) * scale) / 1000]
}

interface Extent {
  readonly min: PlanePoint
  readonly max: PlanePoint
}

function extentOf(points: readonly PlanePoint[]): Extent {
  const [leastE, mostE] = spanOf(points.map(([e]) => e))
  const [leastN, mostN] = spanOf(points.map(([, n]) => n))
  return { min: [leastE, leastN], max: [mostE, mostN] }
}

const centreOf = ({ min, max }: Extent): PlanePoint => [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2]

const roomMm = (frame: Box, edgeMm = EDGE_MM): readonly [number, number] => [
  frame.right - frame.left - 2 * edgeMm,
  frame.bottom - frame.top - 2 * edgeMm,
]

/** All positions in one frame, at the largest round scale that holds them. */
export function windowOver(
  plane: Plane,
  positions: readonly Position[],
  frame: Box,
  edgeMm = EDGE_MM,
): MapWindow {
  const extent = extentOf(positions.length > 0 ? positions.map(plane.toPlane) : [[0, 0]])
  const size = [extent.max[0] - extent.min[0], extent.max[1] - extent.min[1]] as const
  return { plane, middle: centreOf(extent), scale: fittingScale(size, roomMm(frame, edgeMm)), frame }
}

/** Where one strip ends and the next begins: a place on the way, and the direction of the way there, in the plane. */
export interface Cut {
  readonly at: PlanePoint
  readonly ahead: PlanePoint
}

/** How far along a segment one can go until its point leaves the room that `extent` has left, 0…1. */
function reachIn(
  extent: Extent,
  [from, to]: readonly [PlanePoint, PlanePoint],
  roomM: readonly [number, number],
) {
  let part = 1
  for (const axis of [0, 1] as const) {
    const step = to[axis] - from[axis]
    if (step === 0) continue
    const limit = step > 0 ? extent.min[axis] + roomM[axis] : extent.max[axis] - roomM[axis]
    part = Math.min(part, (limit - from[axis]) / step)
  }
  return Math.max(0, part)
}

/** The least that a frame must hold within its edges, mm: in less a strip would get nowhere. */
const LEAST_ROOM_MM = 10

/** The lowest frame that `windowsAlong` can lay a way over, mm. */
export const LEAST_STRIP_MM = 2 * EDGE_MM + LEAST_ROOM_MM

/**
 * A way laid over as few frames as hold it at one scale, in order from its start. Neighbours share the point where the way is cut.
 *
 * Range: frames with 10 mm of room within their edges. In one with none no step could be taken.
 */
export function windowsAlong(
  plane: Plane,
  way: readonly Position[],
  frame: Box,
  scale: number,
): { readonly windows: readonly MapWindow[]; readonly cuts: readonly Cut[] } {
  const points = way.map(plane.toPlane)
  if (roomMm(frame).some((mm) => mm < LEAST_ROOM_MM - 1e-9)) throw new Error('a frame with no room for a way')
  const roomM = roomMm(frame).map((mm) => (mm * scale) / 1000) as unknown as readonly [number, number]
  const windows: MapWindow[] = []
  const cuts: Cut[] = []
  let held: PlanePoint[] = [points[0]!]
  const close = () => windows.push({ plane, middle: centreOf(extentOf(held)), scale, frame })

  for (let i = 1; i < points.length; ) {
    const from = held.at(-1)!
    const to = points[i]!
    const part = reachIn(extentOf(held), [from, to], roomM)
    if (part >= 1) {
      held.push(to)
      i += 1
      continue
    }
    const at: PlanePoint = [from[0] + (to[0] - from[0]) * part, from[1] + (to[1] - from[1]) * part]
    held.push(at)
    close()
    cuts.push({ at, ahead: [to[0] - from[0], to[1] - from[1]] })
    held = [at]
  }
  close()
  return { windows, cuts }
}

/** A match line as drawn: where the map goes on, and what to look for there. */
export interface MatchLine {
  readonly points: Segment
  readonly text: string
}

/** The match line across a way at a cut, as it lies in one of the two windows that share it. */
export function matchAcross(window: MapWindow, { at, ahead }: Cut, text: string): MatchLine {
  const [x, y] = planeToPaper(window, at)
  const length = Math.hypot(...ahead)
  const half = EDGE_MM - 1
  const across: Point = [(ahead[1] / length) * half, (ahead[0] / length) * half]
  return {
    points: [
      [x - across[0], y - across[1]],
      [x + across[0], y + across[1]],
    ],
    text,
  }
}
