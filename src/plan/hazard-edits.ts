import type { Position } from '../geo/position'
import { onGlobe, samePosition } from '../geo/position'
import { bad, ok, type Result } from '../problem'
import type { HazardId } from './id'
import type { Hazard, HazardKind, Plan } from './plan'
import { assertNewFeature, withHazard, without } from './with-feature'

export interface NewHazard {
  readonly id: HazardId
  readonly hazard: HazardKind
  readonly name: string
  /** A line along the vertices, or the area within them. */
  readonly shape: 'line' | 'area'
  readonly vertices: readonly Position[]
}

/** Refused with too few vertices: a line needs two, an area three. An area closes by itself. */
export function addHazard(plan: Plan, { id, hazard, name, shape, vertices }: NewHazard): Result<Plan> {
  assertNewFeature(plan, id)
  const drawn = vertices.map(onGlobe)
  const path = drawn.filter((vertex, index) => index === 0 || !samePosition(vertex, drawn[index - 1]!))
  if (shape === 'area' && path.length > 1 && samePosition(path[0]!, path.at(-1)!)) path.pop()
  const needed = shape === 'area' ? 3 : 2
  if (path.length < needed) {
    const message = `This ${shape} has ${path.length} of the ${needed} corners that it needs: click ${needed - path.length} more.`
    return bad({ code: 'too-few-vertices', at: id, message })
  }
  const geometry: Hazard['geometry'] =
    shape === 'area'
      ? { type: 'Polygon', coordinates: [[...path, path[0]!]] }
      : { type: 'LineString', coordinates: path }
  return ok(withHazard(plan, { id, hazard, name, geometry }))
}

/** Moves one vertex; of an area, one of ring `ring` (0 is the outer one), which stays closed. */
export function moveHazardVertex(plan: Plan, id: HazardId, index: number, to: Position, ring = 0): Plan {
  const hazard = plan.hazards.get(id)
  if (!hazard) return plan
  const { geometry } = hazard
  const path = geometry.type === 'Polygon' ? geometry.coordinates[ring] : geometry.coordinates
  const position = onGlobe(to)
  const vertex = path?.[index]
  if (!path || !vertex || samePosition(vertex, position)) return plan
  if (geometry.type === 'LineString')
    return withHazard(plan, { ...hazard, geometry: { ...geometry, coordinates: path.with(index, position) } })
  const last = path.length - 1
  const moved = path.map((each, k) => (k % last === index % last ? position : each))
  const coordinates = geometry.coordinates.with(ring, moved)
  return withHazard(plan, { ...hazard, geometry: { ...geometry, coordinates } })
}

/** Takes one vertex out, of an area from its outer ring; a line keeps two of them, an area three. */
export function removeHazardVertex(plan: Plan, id: HazardId, index: number): Plan {
  const hazard = plan.hazards.get(id)
  if (!hazard) return plan
  const { geometry } = hazard
  if (geometry.type === 'LineString') {
    const path = geometry.coordinates
    if (path.length <= 2 || !path[index]) return plan
    return withHazard(plan, { ...hazard, geometry: { ...geometry, coordinates: path.toSpliced(index, 1) } })
  }
  const corners = geometry.coordinates[0]?.slice(0, -1) ?? []
  const at = index === corners.length ? 0 : index
  if (corners.length <= 3 || !corners[at]) return plan
  const left = corners.toSpliced(at, 1)
  const coordinates = geometry.coordinates.with(0, [...left, left[0]!])
  return withHazard(plan, { ...hazard, geometry: { ...geometry, coordinates } })
}

export const renameHazard = (plan: Plan, id: HazardId, name: string): Plan => {
  const hazard = plan.hazards.get(id)
  return hazard && hazard.name !== name ? withHazard(plan, { ...hazard, name }) : plan
}

export const setHazardKind = (plan: Plan, id: HazardId, kind: HazardKind): Plan => {
  const hazard = plan.hazards.get(id)
  return hazard && hazard.hazard !== kind ? withHazard(plan, { ...hazard, hazard: kind }) : plan
}

export const removeHazard = (plan: Plan, id: HazardId): Plan =>
  plan.hazards.has(id) ? { ...plan, hazards: without(plan.hazards, new Set([id])) } : plan

/** Adds many hazards at once: one edit, however many there are. */
export function addHazards(plan: Plan, added: readonly Hazard[]): Plan {
  if (added.length === 0) return plan
  const hazards = new Map(plan.hazards)
  for (const hazard of added) {
    assertNewFeature(plan, hazard.id)
    if (hazards.has(hazard.id)) throw new Error(`two new hazards have the id "${hazard.id}"`)
    hazards.set(hazard.id, hazard)
  }
  return { ...plan, hazards }
}
