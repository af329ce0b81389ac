import { contours as marchingSquares } from 'd3-contour'
import type { Patch } from './grid-sampler'

/** A line of one height. */
export interface ContourLine {
  readonly heightM: number
  /** Every fifth is drawn heavier and carries its height. */
  readonly isIndex: boolean
  readonly positions: readonly (readonly [lonDeg: number, latDeg: number])[]
  /** Where its height is written, and the way the line runs there, degrees clockwise from east on the map, −90…90. */
  readonly label?: { readonly at: readonly [lonDeg: number, latDeg: number]; readonly turnDeg: number }
}

const INTERVALS = [1, 2, 5, 10, 20, 25, 50, 100, 200, 250, 500, 1000, 2500, 5000] as const
/** Lines on a map between its lowest and its highest ground, about; more of them run together. */
const LINES = 20
const INDEX_EVERY = 5
/** A line shorter than this many points of the lattice has no room for its height. */
const LABEL_POINTS = 24

/**
 * The contour interval, m, that draws about twenty lines over the relief of a lattice of heights.
 *
 * @param unitM the unit, m, of which the interval is a round figure
 */
export function contourIntervalM(heightsM: Float32Array, unitM = 1): number {
  let [low, high] = [Infinity, -Infinity]
  for (const heightM of heightsM) {
    if (heightM < low) low = heightM
    if (heightM > high) high = heightM
  }
  return (
    unitM * (INTERVALS.find((interval) => (high - low) / (interval * unitM) <= LINES) ?? INTERVALS.at(-1)!)
  )
}

/** Contour lines of a patch of ground, by marching squares; they end at its edges and where the ground is not known. */
export function contourLines(
  heightsM: Float32Array,
  patch: Patch,
  intervalM = contourIntervalM(heightsM),
): ContourLine[] {
  const { columns, rows, at } = patch
  let [low, high] = [Infinity, -Infinity]
  for (const heightM of heightsM) {
    if (heightM < low) low = heightM
    if (heightM > high) high = heightM
  }
  const heights: number[] = []
  for (let n = Math.ceil(low / intervalM); n * intervalM <= high; n++) heights.push(n * intervalM)

  const known = (x: number, y: number) => {
    // A point of a ring lies between two neighbours of the lattice: half a cell from the outside it is no contour.
    const [c, r] = [x - 0.5, y - 0.5]
    if (c < 0 || r < 0 || c > columns - 1 || r > rows - 1) return false
    const heightAt = (column: number, row: number) => heightsM[row * columns + column]!
    // Between the known and the unknown the rings run along the last known points themselves: there, all around must be known.
    if (Number.isInteger(c) && Number.isInteger(r)) {
      const [west, east] = [Math.max(0, c - 1), Math.min(columns - 1, c + 1)]
      const [north, south] = [Math.max(0, r - 1), Math.min(rows - 1, r + 1)]
      return !Number.isNaN(heightAt(west, r) + heightAt(east, r) + heightAt(c, north) + heightAt(c, south))
    }
    const [west, east, north, south] = [Math.floor(c), Math.ceil(c), Math.floor(r), Math.ceil(r)]
    return !Number.isNaN(heightAt(west, north) + heightAt(east, north) + heightAt(west, south))
  }
  const place = ([x, y]: Point) => at((x - 0.5) / Math.max(1, columns - 1), (y - 0.5) / Math.max(1, rows - 1))

  const lines: ContourLine[] = []
  const shapes = marchingSquares().size([columns, rows]).thresholds(heights)(heightsM as unknown as number[])
  for (const { value: heightM, coordinates } of shapes) {
    const isIndex = Math.round(heightM / intervalM) % INDEX_EVERY === 0
    for (const ring of coordinates.flat() as Point[][]) {
      for (const piece of piecesOf(ring, known)) {
        const positions = piece.map(place)
        const label = isIndex && piece.length >= LABEL_POINTS ? labelOf(piece, place) : undefined
        lines.push({ heightM, isIndex, positions, ...(label && { label }) })
      }
    }
  }
  return lines
}

type Point = [x: number, y: number]

/** The stretches of a closed ring that are contours, each from end to end. A ring that is one all round stays closed. */
function piecesOf(ring: readonly Point[], known: (x: number, y: number) => boolean): Point[][] {
  const flags = ring.map(([x, y]) => known(x, y))
  if (flags.every(Boolean)) return [[...ring]]
  const pieces: Point[][] = []
  // Started after a gap, no stretch is torn where the ring happens to close.
  const gap = flags.indexOf(false)
  let piece: Point[] = []
  const open = ring.slice(0, -1)
  for (let i = 0; i <= open.length; i++) {
    const k = (gap + i) % open.length
    if (i < open.length && flags[k]) piece.push(open[k]!)
    else {
      if (piece.length > 1) pieces.push(piece)
      piece = []
    }
  }
  return pieces
}

/** The straightest stretch near a line's middle. */
function labelOf(
  piece: readonly Point[],
  place: (p: Point) => readonly [number, number],
): NonNullable<ContourLine['label']> {
  const REACH = 5
  const first = Math.max(REACH, Math.floor(piece.length / 4))
  const last = Math.min(piece.length - REACH - 1, Math.ceil((piece.length * 3) / 4))
  let best = first
  let bestM = -1
  for (let i = first; i <= last; i++) {
    const [ax, ay] = piece[i - REACH]!
    const [bx, by] = piece[i + REACH]!
    const chord = Math.hypot(bx - ax, by - ay)
    if (chord > bestM) [best, bestM] = [i, chord]
  }
  const [ax, ay] = piece[best - REACH]!
  const [bx, by] = piece[best + REACH]!
  let turnDeg = (Math.atan2(by - ay, bx - ax) * 180) / Math.PI
  if (turnDeg > 90) turnDeg -= 180
  if (turnDeg < -90) turnDeg += 180
  return { at: place(piece[best]!), turnDeg }
}
