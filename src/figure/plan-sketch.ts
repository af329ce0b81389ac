import { planeAbout } from '../geo/plane'
import type { Position } from '../geo/position'
import { spanOf } from '../geo/span'
import { type Plan, verticesOf } from '../plan/plan'
import type { Point } from './geometry'

/** A plan so small that only its shape is seen: what tells one from another in a list. */
export interface PlanSketch {
  /** Courses of hazards and of wire, as the `d` of a path, px. */
  readonly hazards: string
  readonly wires: string
  readonly stations: readonly Point[]
}

/** Stations and wire reach no nearer to the edge, px. */
const EDGE_PX = 7
/** More stations than these would be one blot. */
const MOST_STATIONS = 60

/** A plan fitted into a frame of so many px, true north up; hazards are drawn as far as they reach beyond it. */
export function planSketch(plan: Plan, widthPx: number, heightPx: number): PlanSketch {
  const ways = [...plan.lines.values()].map((line) => verticesOf(plan, line))
  const stations = [...plan.stations.values()].map(({ position }) => position)
  const outlines = [...plan.hazards.values()].flatMap(({ geometry }) =>
    geometry.type === 'Polygon' ? geometry.coordinates : [geometry.coordinates],
  )
  const net = [...ways.flat(), ...stations]
  const seen = net.length > 0 ? net : outlines.flat()
  const plane = planeAbout(seen)
  const points = seen.map(plane.toPlane)
  const [west, east] = spanOf(points.map(([e]) => e))
  const [south, north] = spanOf(points.map(([, n]) => n))
  const pxPerM = Math.min(
    (widthPx - 2 * EDGE_PX) / Math.max(east - west, 1),
    (heightPx - 2 * EDGE_PX) / Math.max(north - south, 1),
  )
  const toPx = (position: Position): Point => {
    const [e, n] = plane.toPlane(position)
    return [widthPx / 2 + (e - (west + east) / 2) * pxPerM, heightPx / 2 - (n - (south + north) / 2) * pxPerM]
  }
  const pathOf = (way: readonly Position[]) =>
    way
      .map(toPx)
      .map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`)
      .join('')
  return {
    hazards: outlines.map(pathOf).join(''),
    wires: ways.map(pathOf).join(''),
    stations: stations.length <= MOST_STATIONS ? stations.map(toPx) : [],
  }
}
