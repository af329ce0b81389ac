import { polygonContains } from 'd3-polygon'
import { degreeM } from '../geo/earth'
import { legGeometry } from '../geo/leg-length'
import { shortWayDeg } from '../geo/longitude'
import type { Position } from '../geo/position'
import { memoryOfEach, memoryOfRow } from '../memo'
import type { HazardId } from '../plan/id'
import { lineRowOf } from '../plan/line-row'
import {
  endsOf,
  type Hazard,
  type HazardKind,
  type Lay,
  type Line,
  type Plan,
  verticesOf,
} from '../plan/plan'
import { radToDeg } from '../units'
import { hazardShape, mayMeet } from './hazard-shape'

/** A place where a line meets a hazard. */
export interface Crossing {
  readonly hazard: HazardId
  readonly kind: HazardKind
  readonly name: string
  readonly legIndex: number
  readonly lay: Lay
  readonly position: readonly [lonDeg: number, latDeg: number]
  /** On the map, from the line's first station, m. */
  readonly distanceM: number
  /** Between the leg and the hazard's course there, 0…90°: 90 is square across. Undefined where a leg begins inside an area. */
  readonly angleDeg: number | undefined
  /** How far the line runs inside an area from there on with this lay, m; 0 across what has no width. */
  readonly insideM: number
}

/** Where a leg cuts one stretch of an outline, 0…1 along the leg, and at what angle. */
interface Cut {
  readonly along: number
  readonly angleDeg: number
}

const remembered = memoryOfEach<Line, readonly Crossing[]>()

/** Every crossing of a line with the plan's hazards, in the order of the line. Asked again with nothing changed, the same list. */
export function crossingsOf(plan: Plan, line: Line): readonly Crossing[] {
  return remembered(line, [plan.hazards, ...endsOf(plan, line)], () =>
    crossingsAlong(plan.hazards.values(), verticesOf(plan, line), line.legs),
  )
}

const rememberedRow = memoryOfRow<Line, readonly Crossing[]>()

/** Every crossing of every line of a plan, in the order of the lines. */
export function crossingsOfPlan(plan: Plan): readonly (readonly Crossing[])[] {
  const { lines, starts, ends } = lineRowOf(plan)
  return rememberedRow(lines, [plan.hazards], [starts, ends], (line) => crossingsOf(plan, line))
}

/** Every crossing of a way, leg by leg, with hazards; in the order of the way. */
export function crossingsAlong(
  hazards: Iterable<Hazard>,
  vertices: readonly Position[],
  legs: readonly { readonly lay: Lay }[],
): Crossing[] {
  const crossings = [...hazards].flatMap((hazard) => crossingsWith(hazard, vertices, legs))
  return crossings.sort((a, b) => a.distanceM - b.distanceM)
}

function crossingsWith(
  hazard: Hazard,
  vertices: readonly Position[],
  legs: readonly { readonly lay: Lay }[],
): Crossing[] {
  const shape = hazardShape(hazard)
  const found: Crossing[] = []
  const about = { hazard: hazard.id, kind: hazard.hazard, name: hazard.name }
  let startM = 0
  for (const [legIndex, leg] of legs.entries()) {
    const a = vertices[legIndex]!
    const b = vertices[legIndex + 1]!
    const lengthM = legGeometry(a, b).mapM
    if (mayMeet(shape, a, b)) {
      const isLast = legIndex === legs.length - 1
      const cuts = shape.paths.flatMap((path) => cutsOf(a, b, path, isLast)).sort((p, q) => p.along - q.along)
      const at = (along: number) => ({
        ...about,
        legIndex,
        lay: leg.lay,
        position: [a[0] + shortWayDeg(b[0] - a[0]) * along, a[1] + (b[1] - a[1]) * along] as const,
        distanceM: startM + lengthM * along,
      })
      if (!shape.isArea)
        for (const { along, angleDeg } of cuts) found.push({ ...at(along), angleDeg, insideM: 0 })
      else
        for (const stretch of insideStretches(hazard, a, b, cuts)) {
          const last = found.at(-1)
          const insideM = (stretch.end - stretch.start) * lengthM
          const goesOn =
            last && stretch.start === 0 && Math.abs(last.distanceM + last.insideM - startM) < 1e-6
          if (goesOn && last.lay === leg.lay)
            found[found.length - 1] = { ...last, insideM: last.insideM + insideM }
          else found.push({ ...at(stretch.start), angleDeg: stretch.angleDeg, insideM })
        }
    }
    startM += lengthM
  }
  return found
}

/** Where a leg cuts a path. A cut at a shared vertex belongs to what begins there, so that it is found once. */
function cutsOf(a: Position, b: Position, path: readonly Position[], isLast: boolean): Cut[] {
  const cuts: Cut[] = []
  const bx = shortWayDeg(b[0] - a[0])
  const by = b[1] - a[1]
  const { lonM, latM } = degreeM(a[1])
  for (let i = 0; i + 1 < path.length; i++) {
    const px = shortWayDeg(path[i]![0] - a[0])
    const py = path[i]![1] - a[1]
    const dx = shortWayDeg(path[i + 1]![0] - path[i]![0])
    const dy = path[i + 1]![1] - path[i]![1]
    const cross = bx * dy - by * dx
    if (cross === 0) continue
    const along = (px * dy - py * dx) / cross
    const across = (px * by - py * bx) / cross
    const endsHere = i + 2 === path.length
    if (along < 0 || across < 0 || along > 1 || across > 1) continue
    if ((along === 1 && !isLast) || (across === 1 && !endsHere)) continue
    const sine =
      Math.abs(cross * lonM * latM) / (Math.hypot(bx * lonM, by * latM) * Math.hypot(dx * lonM, dy * latM))
    cuts.push({ along, angleDeg: radToDeg(Math.asin(Math.min(1, sine))) })
  }
  return cuts
}

/** The stretches of a leg that lie inside an area. */
function insideStretches(
  { geometry }: Hazard,
  a: Position,
  b: Position,
  cuts: readonly Cut[],
): { start: number; end: number; angleDeg: number | undefined }[] {
  if (geometry.type !== 'Polygon') return []
  // Brought next to the area, a leg on the other side of the antimeridian is seen inside it too.
  const nearDeg = geometry.coordinates[0]?.[0]?.[0] ?? a[0]
  const lon0 = nearDeg + shortWayDeg(a[0] - nearDeg)
  const area = geometry.coordinates.map((ring) =>
    ring.map(([lonDeg, latDeg]): [number, number] => [nearDeg + shortWayDeg(lonDeg - nearDeg), latDeg]),
  )
  const isInside = (along: number) => {
    const place: [number, number] = [lon0 + shortWayDeg(b[0] - a[0]) * along, a[1] + (b[1] - a[1]) * along]
    const [outer, ...holes] = area
    return (
      outer !== undefined &&
      polygonContains(outer, place) &&
      !holes.some((hole) => polygonContains(hole, place))
    )
  }
  const marks = [{ along: 0, angleDeg: undefined }, ...cuts, { along: 1, angleDeg: undefined }]
  const stretches: { start: number; end: number; angleDeg: number | undefined }[] = []
  for (let i = 0; i + 1 < marks.length; i++) {
    const { along: start, angleDeg } = marks[i]!
    const end = marks[i + 1]!.along
    if (end - start < 1e-9 || !isInside((start + end) / 2)) continue
    const last = stretches.at(-1)
    if (last && start - last.end < 1e-9) last.end = end
    else stretches.push({ start, end, angleDeg })
  }
  return stretches
}
