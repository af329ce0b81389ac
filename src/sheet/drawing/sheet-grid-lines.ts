import { type Box, clipSegment, type Point, type Segment } from '../../figure/geometry'
import { degreesNear, type GridCoordinates, gridCurves, utmCoordinates } from '../../figure/grid-lines'
import { gridStep } from '../../figure/map-scale'
import { degreeM } from '../../geo/earth'
import { wrapLonDeg } from '../../geo/longitude'
import { hasUtm, utmZone, writtenNorthingM } from '../../geo/utm'
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

const corners = ({ left, top, right, bottom }: Box): readonly Point[] => [
  [left, top],
  [right, top],
  [right, bottom],
  [left, bottom],
]

/** The lines of a grid as far as they lie in the frame, each straight over a map as small as a sheet. */
function linesOf(
  window: MapWindow,
  coordinates: GridCoordinates,
  steps: readonly [number, number],
  label: (value: number, across: 'east' | 'north', step: number) => string,
): readonly GridLine[] {
  const { plane, frame } = window
  const rim = corners(frame).map((corner) => plane.toPosition(paperToPlane(window, corner)))
  return gridCurves(coordinates, rim, steps, 1).flatMap(({ across, value, points }) => {
    const isEast = across === 'east'
    const [start, end] = points.map((position) => toPaper(window, position)) as [Point, Point]
    // From the end at which the label stands.
    const kept = clipSegment(isEast ? [end, start] : [start, end], frame)
    if (!kept) return []
    const text = label(value, across, isEast ? steps[0] : steps[1])
    return [{ points: kept, label: text, edge: isEast ? 'top' : 'left' }]
  })
}

const grouped = (m: number) => String(Math.round(m)).replace(/\B(?=(\d{3})+$)/g, '\u00a0')

function utmGrid(window: MapWindow): MapGrid {
  const [lonDeg, latDeg] = window.plane.middle
  const zone = utmZone(lonDeg, latDeg)
  const stepM = gridStep(WANTED_MM, window.scale, 1)
  const lines = linesOf(window, utmCoordinates(zone, lonDeg), [stepM, stepM], (value, across) =>
    across === 'east' ? `${grouped(value)} E` : `${grouped(writtenNorthingM(value, latDeg < 0))} N`,
  )
  return { lines, name: `grid UTM zone ${zone} ${latDeg < 0 ? 'south' : 'north'}, metres` }
}

const decimals = (step: number) => Math.max(0, Math.ceil(-Math.log10(step) - 1e-9))

/** Meridians and parallels in round decimal degrees: where there is no UTM. */
function graticule(window: MapWindow): MapGrid {
  const [lonDeg, latDeg] = window.plane.middle
  const { lonM, latM } = degreeM(latDeg)
  const steps = [gridStep(WANTED_MM, window.scale, lonM), gridStep(WANTED_MM, window.scale, latM)] as const
  const lines = linesOf(window, degreesNear(lonDeg), steps, (value, across, step) => {
    const shown = across === 'east' ? wrapLonDeg(value) : value
    const [positive, negative] = across === 'east' ? 'EW' : 'NS'
    return `${Math.abs(shown).toFixed(decimals(step))}° ${shown < 0 ? negative : positive}`
  })
  return { lines, name: 'grid in degrees' }
}

/** The grid of a map in round figures: UTM, or degrees about the poles. */
export const mapGrid = (window: MapWindow): MapGrid =>
  hasUtm(window.plane.middle[1]) ? utmGrid(window) : graticule(window)
