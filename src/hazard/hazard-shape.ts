import { shortWayDeg } from '../geo/longitude'
import type { Position } from '../geo/position'
import { memoryOfEach } from '../memo'
import type { Hazard } from '../plan/plan'

/** The outline of a hazard: its one path, or the rings of its area, and the box around them, in degrees. */
export interface HazardShape {
  readonly paths: readonly (readonly Position[])[]
  readonly isArea: boolean
  readonly middleLonDeg: number
  readonly halfWidthDeg: number
  readonly southDeg: number
  readonly northDeg: number
}

const remembered = memoryOfEach<Hazard, HazardShape>()

export const hazardShape = (hazard: Hazard): HazardShape => remembered(hazard, [], () => shapeOf(hazard))

function shapeOf({ geometry }: Hazard): HazardShape {
  const isArea = geometry.type === 'Polygon'
  const paths = isArea ? geometry.coordinates : [geometry.coordinates]
  const firstLonDeg = paths[0]?.[0]?.[0] ?? 0
  let [west, east, southDeg, northDeg] = [0, 0, Infinity, -Infinity]
  for (const path of paths) {
    for (const [lonDeg, latDeg] of path) {
      const offset = shortWayDeg(lonDeg - firstLonDeg)
      west = Math.min(west, offset)
      east = Math.max(east, offset)
      southDeg = Math.min(southDeg, latDeg)
      northDeg = Math.max(northDeg, latDeg)
    }
  }
  return {
    paths,
    isArea,
    middleLonDeg: firstLonDeg + (west + east) / 2,
    halfWidthDeg: (east - west) / 2,
    southDeg,
    northDeg,
  }
}

/** Whether a leg may come within so many degrees of a hazard: a quick no for most of them. */
export function mayMeet(
  shape: HazardShape,
  [lonA, latA]: Position,
  [lonB, latB]: Position,
  marginLonDeg = 0,
  marginLatDeg = 0,
): boolean {
  if (Math.max(latA, latB) + marginLatDeg < shape.southDeg) return false
  if (Math.min(latA, latB) - marginLatDeg > shape.northDeg) return false
  const halfLegDeg = shortWayDeg(lonB - lonA) / 2
  const apartDeg = Math.abs(shortWayDeg(lonA + halfLegDeg - shape.middleLonDeg))
  return apartDeg <= shape.halfWidthDeg + Math.abs(halfLegDeg) + marginLonDeg
}
