import { leastSquares } from './least-squares'
import { nearLonDeg } from './longitude'
import type { Position } from './position'
import { projectionOf } from './projection'

/** A place that is seen on a picture and known on the ground. */
export interface Mark {
  /** From the picture's upper left corner, px. */
  readonly x: number
  readonly y: number
  readonly position: Position
}

/**
 * How a picture lies on the ground: `affine` for a sheet that lay flat, `projective` for one photographed at a slant, `second-order` for paper
 * that is folded or stretched.
 */
export type FitKind = 'affine' | 'projective' | 'second-order'

/** So many marks determine each kind; one more tells how good it is. */
export const LEAST_MARKS: Readonly<Record<FitKind, number>> = { affine: 3, projective: 4, 'second-order': 6 }

/** A fit as a value that can be kept and sent: figures of the way from the picture to the ground, and of the way back. */
export interface MapFit {
  readonly kind: FitKind
  readonly toGround: Way
  readonly toPicture: Way
}

/** One way: its argument is moved and scaled before, its result after, so that the figures are of one size. */
interface Way {
  readonly from: Scaling
  readonly to: Scaling
  /** For x and for y of what comes out; `projective` has both share the last three. */
  readonly figures: readonly (readonly number[])[]
}

interface Scaling {
  readonly x: number
  readonly y: number
  readonly size: number
}

type Point = readonly [x: number, y: number]

const MERCATOR = projectionOf({ kind: 'web-mercator' })
/** Gauss and Newton's steps of a projective fit: it settles after three or four. */
const STEPS = 12
/** Marks whose triangle is flatter than this part of its length determine nothing. */
const FLATTEST = 1e-4

/** Where a position lies on the map of the whole world, m at the equator. */
export const groundPoint = ([lonDeg, latDeg]: Position, nearDeg = lonDeg): Point =>
  MERCATOR.forward(nearLonDeg(lonDeg, nearDeg), latDeg)

/**
 * Fits a picture to the ground by its marks, least squares of what they miss on Mercator's map, which is true to shape over a sheet; undefined
 * where they are too few, or lie on one line.
 *
 * Sources: affine and second order as GDAL's transformer of control points has them (`gdaltransform -gcp … -order 1` and `2`), forward and back
 * each fitted by itself; projective: R. Hartley and A. Zisserman, Multiple View Geometry, 2nd ed. (2004), sections 4.1 and 4.4.
 */
export function fitPicture(kind: FitKind, marks: readonly Mark[]): MapFit | undefined {
  if (marks.length < LEAST_MARKS[kind]) return undefined
  const pixels = marks.map(({ x, y }): Point => [x, y])
  const ground = marks.map(({ position }) => groundPoint(position, marks[0]!.position[0]))
  if (isFlat(pixels) || isFlat(ground)) return undefined
  const toGround = wayOf(kind, pixels, ground)
  const toPicture = wayOf(kind, ground, pixels)
  return toGround && toPicture && { kind, toGround, toPicture }
}

/** Where a place on the picture lies on the ground. */
export const onGround = (fit: MapFit, x: number, y: number): Point => follow(fit.kind, fit.toGround, x, y)

/** Where a place of the ground, m on Mercator's map, lies on the picture, px. */
export const onPicture = (fit: MapFit, eastM: number, northM: number): Point =>
  follow(fit.kind, fit.toPicture, eastM, northM)

/** By how much each mark misses the place that it was given, m on the ground. */
export function residualsM(fit: MapFit, marks: readonly Mark[]): readonly number[] {
  return marks.map(({ x, y, position }) => {
    const [eastM, northM] = groundPoint(position, marks[0]!.position[0])
    const [fittedEastM, fittedNorthM] = onGround(fit, x, y)
    // Mercator's map is larger than the ground by 1 / cos of the latitude.
    return Math.hypot(fittedEastM - eastM, fittedNorthM - northM) * Math.cos((position[1] * Math.PI) / 180)
  })
}

function wayOf(kind: FitKind, from: readonly Point[], to: readonly Point[]): Way | undefined {
  const [before, after] = [scalingOf(from), scalingOf(to)]
  const a = from.map((point) => scaled(before, point))
  const b = to.map((point) => scaled(after, point))
  const figures = kind === 'projective' ? projectiveFigures(a, b) : polynomialFigures(kind, a, b)
  return figures && { from: before, to: after, figures }
}

function follow(kind: FitKind, { from, to, figures }: Way, x: number, y: number): Point {
  const point = scaled(from, [x, y])
  const [u, v] = figures as readonly [readonly number[], readonly number[]]
  const terms = kind === 'second-order' ? secondOrder(point) : firstOrder(point)
  const below = kind === 'projective' ? 1 + u[3]! * point[0] + u[4]! * point[1] : 1
  return [(dot(u, terms) / below) * to.size + to.x, (dot(v, terms) / below) * to.size + to.y]
}

const firstOrder = ([x, y]: Point): readonly number[] => [1, x, y]
const secondOrder = ([x, y]: Point): readonly number[] => [1, x, y, x * x, x * y, y * y]
const dot = (figures: readonly number[], terms: readonly number[]): number =>
  terms.reduce((sum, term, i) => sum + term * figures[i]!, 0)

function polynomialFigures(kind: FitKind, from: readonly Point[], to: readonly Point[]) {
  const rows = from.map(kind === 'affine' ? firstOrder : secondOrder)
  const u = leastSquares(
    rows,
    to.map(([x]) => x),
  )
  const v = leastSquares(
    rows,
    to.map(([, y]) => y),
  )
  return u && v && [u, v]
}

/** u = (a + bx + cy) / (1 + gx + hy), v = (d + ex + fy) / (1 + gx + hy): by the linear equations first, then by what is missed itself. */
function projectiveFigures(from: readonly Point[], to: readonly Point[]) {
  const linear = from.flatMap(([x, y], i) => {
    const [u, v] = to[i]!
    return [
      [1, x, y, 0, 0, 0, -u * x, -u * y],
      [0, 0, 0, 1, x, y, -v * x, -v * y],
    ]
  })
  let found = leastSquares(linear, to.flat())
  for (let step = 0; found && step < STEPS; step++) {
    const [a, b, c, d, e, f, g, h] = found as readonly number[]
    const rows: number[][] = []
    const missed: number[] = []
    for (const [i, [x, y]] of from.entries()) {
      const below = 1 + g! * x + h! * y
      const [u, v] = [(a! + b! * x + c! * y) / below, (d! + e! * x + f! * y) / below]
      rows.push([1, x, y, 0, 0, 0, -u * x, -u * y].map((term) => term / below))
      rows.push([0, 0, 0, 1, x, y, -v * x, -v * y].map((term) => term / below))
      missed.push(to[i]![0] - u, to[i]![1] - v)
    }
    const change = leastSquares(rows, missed)
    if (!change) break
    found = found.map((figure, i) => figure + change[i]!)
  }
  if (!found?.every(Number.isFinite)) return undefined
  const [a, b, c, d, e, f, g, h] = found as [number, number, number, number, number, number, number, number]
  return [
    [a, b, c, g, h],
    [d, e, f, g, h],
  ]
}

/** Moves points about their middle, to a size of one. */
function scalingOf(points: readonly Point[]): Scaling {
  const mean = (axis: 0 | 1) => points.reduce((sum, point) => sum + point[axis], 0) / points.length
  const [x, y] = [mean(0), mean(1)]
  return { x, y, size: Math.max(...points.map((point) => Math.hypot(point[0] - x, point[1] - y))) || 1 }
}

const scaled = ({ x, y, size }: Scaling, point: Point): Point => [
  (point[0] - x) / size,
  (point[1] - y) / size,
]

/** Whether points lie on one line, as good as: then the smaller of their two spreads is nothing beside the larger. */
function isFlat(points: readonly Point[]): boolean {
  const at = points.map((point) => scaled(scalingOf(points), point))
  const sum = (of: (point: Point) => number) => at.reduce((total, point) => total + of(point), 0)
  const [xx, xy, yy] = [sum(([x]) => x * x), sum(([x, y]) => x * y), sum(([, y]) => y * y)]
  const half = Math.hypot((xx - yy) / 2, xy)
  const [most, least] = [(xx + yy) / 2 + half, (xx + yy) / 2 - half]
  return !(least > most * FLATTEST ** 2)
}
