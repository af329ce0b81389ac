import type { Position } from '../geo/position'
import { spanOf } from '../geo/span'
import { type Plan, verticesOf } from '../plan/plan'
import type { Extent } from './elevation-grid'

/** Room left round a plan, degrees: some 2 km north and south, for routes that are moved a little. */
const MARGIN_DEG = 0.02

function spread(values: readonly number[]): number {
  const [least, most] = spanOf(values)
  return most - least
}

/** The part of the globe that a plan's stations and lines lie in, with a margin; undefined for a plan without stations. East is above 180 where it lies across the antimeridian. */
export const planExtent = (plan: Plan): Extent | undefined =>
  extentAbout([
    ...[...plan.stations.values()].map(({ position }) => position),
    ...[...plan.lines.values()].flatMap((line) => verticesOf(plan, line)),
  ])

/** The same about any places. */
export function extentAbout(points: readonly Position[]): Extent | undefined {
  if (points.length === 0) return undefined
  const across = spread(points.map(([lonDeg]) => lonDeg)) > 180
  const lons = points.map(([lonDeg]) => (across && lonDeg < 0 ? lonDeg + 360 : lonDeg))
  const lats = points.map(([, latDeg]) => latDeg)
  const [westDeg, eastDeg] = spanOf(lons)
  const [southDeg, northDeg] = spanOf(lats)
  return {
    westDeg: westDeg - MARGIN_DEG,
    southDeg: southDeg - MARGIN_DEG,
    eastDeg: eastDeg + MARGIN_DEG,
    northDeg: northDeg + MARGIN_DEG,
  }
}
