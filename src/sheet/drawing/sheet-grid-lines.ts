import { type Box, clipSegment, type Point, type Segment } from '../../figure/geometry'
import { gridStep } from '../../figure/map-scale'
import { type UtmZone, utmZoneOf } from '../../geo/utm-zone'
import { type MapWindow, paperToPlane, toPaper } from './map-window'

/** One line of a map's grid, and the label at its end. */
export interface GridLine {
  readonly points: Segment
  readonly label: string
  /** `top`: the line runs north, its label stands above the frame · `left`: it runs east, its label beside the frame. */
  readonly edge: 'top' | 'left'
}

export interface MapGrid {
  readonly lines: readonly GridLine[]
  /** What grid it is, in words. */
  readonly name: string
}

const WANTED_MM = 30
const METRES_PER_DEGREE = 111_000

const corners = ({ left, top, right, bottom }: Box): readonly Point[] => [
  [left, top],
  [right, top],
  [right, bottom],
  [left, bottom],
]

/** A grid in some coordinates of its own: how to get into them and out of them, and how its lines are named. */
interface Coordinates {
  readonly of: (position: readonly [number, number]) => readonly [number, number]
  readonly back: (x: number, y: number) => readonly [number, number]
  readonly steps: readonly [number, number]
  readonly label: (value: number, axis: 0 | 1, step: number) => string
}

/** Multiples of the step from one end of a range to the other. */
function marks(values: readonly number[], step: number): readonly number[] {
  const first = Math.ceil(Math.min(...values) / step - 1e-9)
  const last = Math.floor(Math.max(...values) / step + 1e-9)
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step)
}

function linesOf(window: MapWindow, { of, back, steps, label }: Coordinates): readonly GridLine[] {
  const { plane, frame } = window
  const at = corners(frame).map((corner) => of(plane.toPosition(paperToPlane(window, corner))))
  const ranges = [at.map(([x]) => x), at.map(([, y]) => y)] as const
  const line = (axis: 0 | 1, value: number): readonly GridLine[] => {
    const along = ranges[(1 - axis) as 0 | 1]
    const [start, end] = [Math.min(...along), Math.max(...along)].map((other) =>
      toPaper(window, axis === 0 ? back(value, other) : back(other, value)),
    ) as [Point, Point]
    const points = clipSegment(axis === 0 ? [end, start] : [start, end], frame)
    return points
      ? [{ points, label: label(value, axis, steps[axis]), edge: axis === 0 ? 'top' : 'left' }]
      : []
  }
  return ([0, 1] as const).flatMap((axis) =>
    marks(ranges[axis], steps[axis]).flatMap((value) => line(axis, value)),
  )
}

const grouped = (m: number) => String(Math.round(m)).replace(/\B(?=(\d{3})+$)/g, '\u00a0')

function utmGrid(window: MapWindow, zone: UtmZone): MapGrid {
  const step = gridStep(WANTED_MM, window.scale, 1)
  const lines = linesOf(window, {
    of: (position) => zone.forward(position),
    back: zone.inverse,
    steps: [step, step],
    label: (value, axis) => `${grouped(value)} ${axis === 0 ? 'E' : 'N'}`,
  })
  return { lines, name: `grid UTM zone ${zone.zone} ${zone.south ? 'south' : 'north'}, metres` }
}

const decimals = (step: number) => Math.max(0, Math.ceil(-Math.log10(step) - 1e-9))

/** Meridians and parallels in round decimal degrees: where there is no UTM. */
function graticule(window: MapWindow): MapGrid {
  const [middleLonDeg, middleLatDeg] = window.plane.middle
  const latStep = gridStep(WANTED_MM, window.scale, METRES_PER_DEGREE)
  const eastM = window.plane.toPlane([middleLonDeg + 1e-3, middleLatDeg])[0] * 1e3
  const lines = linesOf(window, {
    // Longitude is counted from the middle, so that it runs on across the antimeridian.
    of: ([lonDeg, latDeg]) => [
      middleLonDeg + ((((lonDeg - middleLonDeg + 540) % 360) + 360) % 360) - 180,
      latDeg,
    ],
    back: (lonDeg, latDeg) => [lonDeg, latDeg],
    steps: [gridStep(WANTED_MM, window.scale, eastM), latStep],
    label: (value, axis, step) => {
      const shown = axis === 0 ? ((((value + 180) % 360) + 360) % 360) - 180 : value
      const hemisphere = axis === 0 ? (shown < 0 ? 'W' : 'E') : shown < 0 ? 'S' : 'N'
      return `${Math.abs(shown).toFixed(decimals(step))}° ${hemisphere}`
    },
  })
  return { lines, name: 'grid in degrees' }
}

/** The grid of a map in round figures: UTM, or degrees about the poles. */
export function mapGrid(window: MapWindow): MapGrid {
  const zone = utmZoneOf(window.plane.middle)
  return zone ? utmGrid(window, zone) : graticule(window)
}
