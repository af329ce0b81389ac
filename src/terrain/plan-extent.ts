import { type Plan, verticesOf } from '../plan/plan'
import type { Extent } from './elevation-grid'

/** Room left round a plan, degrees: some 2 km north and south, for routes that are moved a little. */
const MARGIN_DEG = 0.02

const spread = (values: readonly number[]) => Math.max(...values) - Math.min(...values)

/** The part of the globe that a plan's stations and lines lie in, with a margin; undefined for a plan without stations. East is above 180 where it lies across the antimeridian. */
export function planExtent(plan: Plan): Extent | undefined {
  const points = [
    ...[...plan.stations.values()].map(({ position }) => position),
    ...[...plan.lines.values()].flatMap((line) => verticesOf(plan, line)),
  ]
  if (points.length === 0) return undefined
  const across = spread(points.map(([lonDeg]) => lonDeg)) > 180
  const lons = points.map(([lonDeg]) => (across && lonDeg < 0 ? lonDeg + 360 : lonDeg))
  const lats = points.map(([, latDeg]) => latDeg)
  return {
    westDeg: Math.min(...lons) - MARGIN_DEG,
    southDeg: Math.min(...lats) - MARGIN_DEG,
    eastDeg: Math.max(...lons) + MARGIN_DEG,
    northDeg: Math.max(...lats) + MARGIN_DEG,
  }
}
