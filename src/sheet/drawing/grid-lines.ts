import type { Box, Point } from './geometry'
import { gridStep } from './map-scale'
import type { Plane } from './plane'

/** One line of a map's grid, and the label at its end. */
export interface GridLine {
  readonly points: readonly [Point, Point]
  readonly label: string
  /** `top`: the line runs north, its label stands above the frame · `left`: it runs east, its label beside the frame. */
  readonly edge: 'top' | 'left'
}

const WANTED_MM = 32
const METRES_PER_DEGREE = 111_000

const decimals = (step: number) => Math.max(0, Math.ceil(-Math.log10(step) - 1e-9))

/** Meridians and parallels in round decimal degrees, where they lie in the frame. */
export function graticule(plane: Plane, scale: number, frame: Box, middle: Point): readonly GridLine[] {
  const mmPerDeg = (deg: number, axis: 0 | 1) => {
    const [lonDeg, latDeg] = plane.middle
    const point = plane.toPlane(axis === 0 ? [lonDeg + deg, latDeg] : [lonDeg, latDeg + deg])
    return (point[axis] * 1000) / scale / deg
  }
  const lines: GridLine[] = []
  for (const axis of [0, 1] as const) {
    const perDeg = mmPerDeg(1e-3, axis)
    const stepDeg = gridStep(
      WANTED_MM * Math.max(1, METRES_PER_DEGREE / ((perDeg * scale) / 1000)),
      scale,
      METRES_PER_DEGREE,
    )
    const at = plane.middle[axis]
    const half = axis === 0 ? (frame.right - frame.left) / 2 : (frame.bottom - frame.top) / 2
    const first = Math.ceil((at - half / perDeg) / stepDeg)
    const last = Math.floor((at + half / perDeg) / stepDeg)
    for (let k = first; k <= last; k++) {
      const deg = k * stepDeg
      const shown = axis === 0 ? ((((deg + 180) % 360) + 360) % 360) - 180 : deg
      const hemisphere = axis === 0 ? (shown < 0 ? 'W' : 'E') : shown < 0 ? 'S' : 'N'
      const label = `${Math.abs(shown).toFixed(decimals(stepDeg))}° ${hemisphere}`
      if (axis === 0) {
        const x = middle[0] + (deg - at) * perDeg
        lines.push({
          points: [
            [x, frame.top],
            [x, frame.bottom],
          ],
          label,
          edge: 'top',
        })
      } else {
        const y = middle[1] - (deg - at) * perDeg
        lines.push({
          points: [
            [frame.left, y],
            [frame.right, y],
          ],
          label,
          edge: 'left',
        })
      }
    }
  }
  return lines
}
