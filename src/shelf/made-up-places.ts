import { legGeometry } from '../geo/leg-length'
import { planeAbout } from '../geo/plane'
import { onGlobe, type Position } from '../geo/position'

/** Steps of the search for places in a plane. Counted, not timed: the same distances always get the same places. */
const STEPS = 2000
/** What a straight line may be longer than the distance that was typed, m: the rounding of positions. */
const ROUNDING_M = 0.01

type Point = [x: number, y: number]

const apart = ([ax, ay]: Point, [bx, by]: Point): number => Math.hypot(ax - bx, ay - by)

/**
 * Positions for places of which only the distances are known: as far from each other as they can be in a plane, and no two farther than
 * their distance, so that a line between them can be made as long as was typed. They lie where the equator meets the meridian of
 * Greenwich, in the sea.
 *
 * Stress majorization from a ring of places, then the pairs that lie too far apart are drawn together, then all is shrunk by what is
 * still too much. Source: J. de Leeuw, Applications of convex analysis to multidimensional scaling (1977), the Guttman transform.
 */
export function madeUpPlaces(distancesM: readonly (readonly number[])[]): readonly Position[] {
  const count = distancesM.length
  const typed = (i: number, j: number) => distancesM[i]![j]!
  let points: Point[] = distancesM.map((row, i) => {
    const farM = Math.max(...row) / 2
    // The first of them in the west, the others after it by the north.
    const turn = Math.PI - (2 * Math.PI * i) / count
    return [farM * Math.cos(turn), farM * Math.sin(turn)]
  })
  for (let step = 0; step < STEPS; step++) points = majorized(points, typed)
  for (let step = 0; step < STEPS; step++) if (!drawTogether(points, typed)) break

  const plane = planeAbout([[0, 0]])
  let positions: Position[] = []
  for (let turn = 0; turn < 8; turn++) {
    positions = points.map((point) => onGlobe(plane.toPosition(point)))
    let most = 1
    for (let i = 0; i < count; i++)
      for (let j = i + 1; j < count; j++) {
        const straightM = legGeometry(positions[i]!, positions[j]!).mapM
        if (straightM > typed(i, j) + ROUNDING_M) most = Math.max(most, straightM / typed(i, j))
      }
    if (most === 1) break
    points = points.map(([x, y]): Point => [x / most, y / most])
  }
  return positions
}

type Distance = (i: number, j: number) => number

/** One Guttman transform: every place moves to the middle of where the others want it. */
function majorized(points: readonly Point[], typed: Distance): Point[] {
  const count = points.length
  return points.map((point, i): Point => {
    let [x, y] = [0, 0]
    for (let j = 0; j < count; j++) {
      if (j === i) continue
      const other = points[j]!
      const now = apart(point, other)
      const ratio = now > 0 ? typed(i, j) / now : 0
      x += other[0] + ratio * (point[0] - other[0])
      y += other[1] + ratio * (point[1] - other[1])
    }
    return [x / (count - 1), y / (count - 1)]
  })
}

/** Draws the pairs that lie too far apart together, half of the excess each; false where there are none. */
function drawTogether(points: Point[], typed: Distance): boolean {
  let moved = false
  for (let i = 0; i < points.length; i++)
    for (let j = i + 1; j < points.length; j++) {
      const [a, b] = [points[i]!, points[j]!]
      const now = apart(a, b)
      const excess = (now - typed(i, j)) / now / 2
      if (!(excess > 1e-9)) continue
      moved = true
      const [dx, dy] = [(b[0] - a[0]) * excess, (b[1] - a[1]) * excess]
      points[i] = [a[0] + dx, a[1] + dy]
      points[j] = [b[0] - dx, b[1] - dy]
    }
  return moved
}

/**
 * Bends that make a way between two positions as long as it is said to be: one, to the side of the middle, where a straight line is too
 * short; none where it is not.
 */
export function bendsFor(from: Position, to: Position, lengthM: number): readonly Position[] {
  const straightM = legGeometry(from, to).mapM
  if (lengthM - straightM <= ROUNDING_M) return []
  const plane = planeAbout([from, to])
  const [a, b] = [plane.toPlane(from), plane.toPlane(to)]
  const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
  const [ux, uy] = straightM > 0 ? [(b[0] - a[0]) / straightM, (b[1] - a[1]) / straightM] : [1, 0]
  const bendAt = (aside: number) =>
    onGlobe(plane.toPosition([middle[0] - aside * uy, middle[1] + aside * ux]))
  const overM = (aside: number) => {
    const bend = bendAt(aside)
    return legGeometry(from, bend).mapM + legGeometry(bend, to).mapM - lengthM
  }
  let [low, high] = [0, lengthM]
  for (let step = 0; step < 60 && high - low > 1e-4; step++) {
    const aside = (low + high) / 2
    if (overM(aside) > 0) high = aside
    else low = aside
  }
  return [bendAt((low + high) / 2)]
}
