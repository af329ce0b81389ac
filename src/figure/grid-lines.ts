import { nearLonDeg } from '../geo/longitude'
import { spanOf } from '../geo/span'
import { lonLatFromUtm, utmFromLonLat } from '../geo/utm'

type LonLat = readonly [lonDeg: number, latDeg: number]

/** What a map's grid counts in: into its own x and y, and out of them. */
export interface GridCoordinates {
  readonly toGrid: (position: LonLat) => readonly [x: number, y: number]
  /** Longitudes run on past ±180, so that a line does not jump across the map. */
  readonly toLonLat: (x: number, y: number) => LonLat
}

/** Metres of one UTM zone, without the false northing; longitudes within 180° of the one given. */
export const utmCoordinates = (zone: number, nearDeg: number): GridCoordinates => ({
  toGrid: ([lonDeg, latDeg]) => {
    const { eastingM, northingM } = utmFromLonLat(lonDeg, latDeg, zone)
    return [eastingM, northingM]
  },
  toLonLat: (eastingM, northingM) => {
    const [lonDeg, latDeg] = lonLatFromUtm({ zone, eastingM, northingM })
    return [nearLonDeg(lonDeg, nearDeg), latDeg]
  },
})

/** Degrees as they come, for a map that counts on past ±180. */
export const DEGREES: GridCoordinates = {
  toGrid: (position) => position,
  toLonLat: (lonDeg, latDeg) => [lonDeg, latDeg],
}

/** Degrees, longitudes within 180° of the one given. */
export const degreesNear = (nearDeg: number): GridCoordinates => ({
  ...DEGREES,
  toGrid: ([lonDeg, latDeg]) => [nearLonDeg(lonDeg, nearDeg), latDeg],
})

/** A line on which one coordinate keeps its value. */
interface GridCurve {
  /** `east`: it runs north and counts eastward · `north`: it runs east. */
  readonly across: 'east' | 'north'
  readonly value: number
  readonly points: readonly LonLat[]
}

/**
 * The lines of a grid over a piece of ground: each multiple of a step that its rim reaches.
 *
 * @param rim places round the piece of ground, as close together as the bend of its edges asks
 * @param steps between lines that count eastward, and northward, in the grid's own coordinates
 * @param parts straight parts that stand for each curve
 */
export function gridCurves(
  { toGrid, toLonLat }: GridCoordinates,
  rim: readonly LonLat[],
  [eastStep, northStep]: readonly [number, number],
  parts: number,
): readonly GridCurve[] {
  const at = rim.map(toGrid)
  const [left, right] = spanOf(at.map(([x]) => x))
  const [bottom, top] = spanOf(at.map(([, y]) => y))
  const east = multiples(eastStep, left, right).map((x) => ({
    across: 'east' as const,
    value: x,
    points: evenly(bottom, top, parts).map((y) => toLonLat(x, y)),
  }))
  const north = multiples(northStep, bottom, top).map((y) => ({
    across: 'north' as const,
    value: y,
    points: evenly(left, right, parts).map((x) => toLonLat(x, y)),
  }))
  return [...east, ...north]
}

/** The multiples of a step from one end of a range to the other. */
function multiples(step: number, least: number, most: number): number[] {
  const first = Math.ceil(least / step - 1e-9)
  const last = Math.floor(most / step + 1e-9)
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step)
}

/** Numbers from one to another, both among them. */
export const evenly = (from: number, to: number, parts: number): number[] =>
  Array.from({ length: parts + 1 }, (_, i) => from + ((to - from) * i) / parts)
