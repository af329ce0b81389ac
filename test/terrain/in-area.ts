import type { Position } from '../../src/geo/position'
import type { Area } from '../../src/terrain/rings-within'

/** Whether a place lies in an area: even-odd over all its rings. */
export function isInArea(area: Area, [lon, lat]: Position): boolean {
  let inside = false
  for (const ring of area.flat()) {
    for (let i = 0; i + 1 < ring.length; i++) {
      const [[ax, ay], [bx, by]] = [ring[i]!, ring[i + 1]!]
      if (ay > lat !== by > lat && lon < ax + ((lat - ay) / (by - ay)) * (bx - ax)) inside = !inside
    }
  }
  return inside
}
