import type { HazardId, LineId, StationId } from '../../plan/id'
import { boundsOf, meets } from '../view/line-path'
import type { Point } from '../view/map-view'

/** Everything on the map that a hand can take hold of, as points on the screen. */
export interface Scene {
  readonly stations: readonly { readonly id: StationId; readonly at: Point }[]
  /** Every vertex of the line, its two stations included. */
  readonly lines: readonly {
    readonly id: LineId
    readonly path: readonly Point[]
    /** Its bends lie too close together to be told apart: a hand means the leg. */
    readonly isCrowded?: boolean
  }[]
  readonly hazards: readonly { readonly id: HazardId; readonly path: readonly Point[] }[]
}

export type Here =
  | { readonly kind: 'station'; readonly id: StationId }
  /** `index` counts the bends from 0. */
  | { readonly kind: 'bend'; readonly line: LineId; readonly index: number }
  | { readonly kind: 'leg'; readonly line: LineId; readonly leg: number }
  | { readonly kind: 'corner'; readonly hazard: HazardId; readonly index: number }
  | { readonly kind: 'hazard'; readonly id: HazardId }
  | null

/** Half the width and height of a station's symbol, px. */
const STATION_HALF = { x: 13, y: 9 }

const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y)

/** The place on a straight stretch that is nearest to a point. */
export function nearestOnStretch(point: Point, from: Point, to: Point): Point {
  const dx = to.x - from.x
  const dy = to.y - from.y
  const squared = dx * dx + dy * dy
  const t = squared ? ((point.x - from.x) * dx + (point.y - from.y) * dy) / squared : 0
  const held = Math.min(1, Math.max(0, t))
  return { x: from.x + dx * held, y: from.y + dy * held }
}

/** Distance of a point from a straight stretch, px. */
export const distanceFromStretch = (point: Point, from: Point, to: Point): number =>
  distance(point, nearestOnStretch(point, from, to))

const distanceFromStation = (point: Point, at: Point): number =>
  Math.hypot(
    Math.max(0, Math.abs(point.x - at.x) - STATION_HALF.x),
    Math.max(0, Math.abs(point.y - at.y) - STATION_HALF.y),
  )

/** The nearest of several things within reach; the last drawn of those equally near. */
function nearest<T>(things: Iterable<T>, distanceOf: (thing: T) => number, reachPx: number): T | undefined {
  let best: T | undefined
  let bestPx = reachPx
  for (const thing of things) {
    const px = distanceOf(thing)
    if (px > bestPx) continue
    best = thing
    bestPx = px
  }
  return best
}

/** The station under a point, for snapping. */
export const stationHere = (scene: Scene, point: Point, reachPx: number): StationId | undefined =>
  nearest(scene.stations, ({ at }) => distanceFromStation(point, at), reachPx)?.id

/** What a hand at this point means: a station before a bend, a bend before a leg, wire before a hazard. */
export function whatsHere(scene: Scene, point: Point, reachPx: number): Here {
  const station = stationHere(scene, point, reachPx)
  if (station) return { kind: 'station', id: station }

  const around = {
    min: { x: point.x - reachPx, y: point.y - reachPx },
    max: { x: point.x + reachPx, y: point.y + reachPx },
  }
  const near = scene.lines.filter(({ path }) => meets(boundsOf(path), around))
  const bends = near.flatMap(({ id, path, isCrowded }) =>
    isCrowded ? [] : path.slice(1, -1).map((at, index) => ({ line: id, index, at })),
  )
  const bend = nearest(bends, ({ at }) => distance(point, at), reachPx)
  if (bend) return { kind: 'bend', line: bend.line, index: bend.index }

  const leg = nearest(legsOf(near), ({ from, to }) => distanceFromStretch(point, from, to), reachPx)
  if (leg) return { kind: 'leg', line: leg.line, leg: leg.leg }

  const corners = scene.hazards.flatMap(({ id, path }) =>
    path.map((at, index) => ({ hazard: id, index, at })),
  )
  const corner = nearest(corners, ({ at }) => distance(point, at), reachPx)
  if (corner) return { kind: 'corner', hazard: corner.hazard, index: corner.index }

  const hazard = nearest(scene.hazards, ({ path }) => distanceFromPath(point, path), reachPx)
  return hazard ? { kind: 'hazard', id: hazard.id } : null
}

function* legsOf(lines: Scene['lines']) {
  for (const { id, path } of lines) {
    for (let leg = 0; leg + 1 < path.length; leg++)
      yield { line: id, leg, from: path[leg]!, to: path[leg + 1]! }
  }
}

function distanceFromPath(point: Point, path: readonly Point[]): number {
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i + 1 < path.length; i++)
    least = Math.min(least, distanceFromStretch(point, path[i]!, path[i + 1]!))
  return least
}
