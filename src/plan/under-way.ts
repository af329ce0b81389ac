import type { Position } from '../geo/position'
import type { TrackPoint } from './field-schema'
import { HAZARD_KINDS } from './hazard-schema'
import type { LineId } from './id'
import { LAYS } from './lays'
import type { Place } from './place'
import type { HazardKind, Lay, Plan } from './plan'

/** What somebody has begun to draw and is on no plan yet: kept beside it, so that a reload or a crash does not lose it. */
export type UnderWay =
  | {
      readonly kind: 'line'
      readonly start: Place
      readonly bends: readonly Position[]
      /** How the leg up to each bend is laid. */
      readonly lays: readonly Lay[]
    }
  /** The way that somebody walks along a line just now. */
  | { readonly kind: 'track'; readonly line: LineId; readonly points: readonly TrackPoint[] }
  | { readonly kind: 'hazard'; readonly hazard: HazardKind; readonly corners: readonly Position[] }

/** What was kept as under way, if it is still what it was and still belongs on the plan; else null. */
export function readUnderWay(value: unknown, plan: Plan): UnderWay | null {
  const kept = (value ?? {}) as Partial<Record<string, unknown>>
  if (kept.kind === 'line') {
    const { start, bends, lays } = kept
    const isWhole =
      isPlace(start, plan) && isPath(bends) && isListOf(lays, isLay) && lays.length === bends.length
    return isWhole ? { kind: 'line', start, bends, lays } : null
  }
  if (kept.kind === 'track') {
    const { line, points } = kept
    const isWhole = plan.lines.has(line as LineId) && isListOf(points, isTrackPoint) && points.length > 0
    return isWhole ? { kind: 'track', line: line as LineId, points } : null
  }
  const { hazard, corners } = kept
  const isWhole = kept.kind === 'hazard' && isHazard(hazard) && isPath(corners) && corners.length > 0
  return isWhole ? { kind: 'hazard', hazard, corners } : null
}

const isListOf = <T>(value: unknown, is: (one: unknown) => one is T): value is readonly T[] =>
  Array.isArray(value) && value.every(is)
const isLay = (value: unknown): value is Lay => LAYS.some((lay) => lay === value)
const isHazard = (value: unknown): value is HazardKind => HAZARD_KINDS.some((kind) => kind === value)
const isPosition = (value: unknown): value is readonly [number, number] =>
  Array.isArray(value) && value.length >= 2 && value.every(Number.isFinite) && Math.abs(value[1]) <= 90
/** As far as it takes to be a place: the record that it goes into is judged whole. */
const isTrackPoint = (value: unknown): value is TrackPoint =>
  Array.isArray(value) && isPosition(value.slice(0, 2))
const isPath = (value: unknown): value is readonly Position[] => isListOf(value, isPosition)

function isPlace(value: unknown, { stations, lines }: Plan): value is Place {
  const { kind, id, line, leg, position } = (value ?? {}) as Partial<Record<string, unknown>>
  if (kind === 'station') return stations.has(id as never)
  if (kind === 'ground') return isPosition(position)
  const legs = kind === 'wire' && lines.get(line as never)?.legs
  return Boolean(legs && typeof leg === 'number' && legs[leg] && isPosition(position))
}
