import { degreeM } from '../geo/earth'
import { legGeometry } from '../geo/leg-length'
import { shortWayDeg } from '../geo/longitude'
import type { Position } from '../geo/position'
import type { HazardId } from '../plan/id'
import { type Hazard, type HazardKind, type Line, type Plan, verticesOf } from '../plan/plan'
import { hazardShape, mayMeet } from './hazard-shape'

/** A stretch of a line that runs beside a hazard. Distances on the map from the line's first station, m. */
export interface Beside {
  readonly hazard: HazardId
  readonly name: string
  readonly startM: number
  readonly endM: number
  readonly position: readonly [lonDeg: number, latDeg: number]
  readonly legIndex: number
  /** Where it comes closest, m. */
  readonly nearestM: number
  /** How much of the stretch runs nearly the hazard's way, m. */
  readonly parallelM: number
}

/** Places along a line at which its distance is taken, m apart. */
const EVERY_M = 10
/** Within this of the hazard's own course a leg counts as parallel: cos 30°. */
const PARALLEL_COS = Math.cos(Math.PI / 6)

/** The stretches of a line within a distance of hazards of one kind, in the order of the line. */
export function stretchesBeside(plan: Plan, line: Line, kind: HazardKind, withinM: number): Beside[] {
  const vertices = verticesOf(plan, line)
  const found = [...plan.hazards.values()]
    .filter((hazard) => hazard.hazard === kind)
    .flatMap((hazard) => besideOne(hazard, vertices, withinM))
  return found.sort((a, b) => a.startM - b.startM)
}

function besideOne(hazard: Hazard, vertices: readonly Position[], withinM: number): Beside[] {
  const shape = hazardShape(hazard)
  const found: Beside[] = []
  let open: { -readonly [K in keyof Beside]: Beside[K] } | undefined
  const close = () => {
    if (open) found.push(open)
    open = undefined
  }
  let startM = 0
  for (let legIndex = 0; legIndex + 1 < vertices.length; legIndex++) {
    const a = vertices[legIndex]!
    const b = vertices[legIndex + 1]!
    const lengthM = legGeometry(a, b).mapM
    const { lonM, latM } = degreeM(a[1])
    if (!mayMeet(shape, a, b, withinM / lonM, withinM / latM)) {
      close()
      startM += lengthM
      continue
    }
    const wayX = (shortWayDeg(b[0] - a[0]) * lonM) / lengthM
    const wayY = ((b[1] - a[1]) * latM) / lengthM
    const steps = Math.max(1, Math.ceil(lengthM / EVERY_M))
    for (let i = 0; i <= steps; i++) {
      const t = i / steps
      const position = [a[0] + shortWayDeg(b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t] as const
      const near = nearest(position, shape.paths, lonM, latM)
      if (near.distanceM > withinM) {
        close()
        continue
      }
      const atM = startM + lengthM * t
      open ??= {
        ...{ hazard: hazard.id, name: hazard.name, startM: atM, endM: atM, position, legIndex },
        ...{ nearestM: near.distanceM, parallelM: 0 },
      }
      if (Math.abs(wayX * near.wayX + wayY * near.wayY) >= PARALLEL_COS) open.parallelM += atM - open.endM
      open.endM = atM
      if (near.distanceM < open.nearestM)
        Object.assign(open, { nearestM: near.distanceM, position, legIndex })
    }
    startM += lengthM
  }
  close()
  return found
}

/** Distance to the nearest point of an outline, m, and the way it runs there. */
function nearest(
  [lonDeg, latDeg]: readonly [number, number],
  paths: readonly (readonly Position[])[],
  lonM: number,
  latM: number,
): { distanceM: number; wayX: number; wayY: number } {
  let best = { distanceM: Infinity, wayX: 0, wayY: 0 }
  for (const path of paths) {
    for (let i = 0; i + 1 < path.length; i++) {
      const ax = shortWayDeg(path[i]![0] - lonDeg) * lonM
      const ay = (path[i]![1] - latDeg) * latM
      const dx = shortWayDeg(path[i + 1]![0] - path[i]![0]) * lonM
      const dy = (path[i + 1]![1] - path[i]![1]) * latM
      const length2 = dx * dx + dy * dy
      if (length2 === 0) continue
      const t = Math.min(1, Math.max(0, -(ax * dx + ay * dy) / length2))
      const distanceM = Math.hypot(ax + dx * t, ay + dy * t)
      if (distanceM < best.distanceM) {
        const length = Math.sqrt(length2)
        best = { distanceM, wayX: dx / length, wayY: dy / length }
      }
    }
  }
  return best
}
