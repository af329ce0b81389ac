import type { Position } from '../geo/position'
import { HAZARD } from '../plan/hazard-schema'
import type { HazardId, LineId, StationId } from '../plan/id'
import { LINE } from '../plan/line-schema'
import type { Hazard, Line, Station } from '../plan/plan'
import { STATION } from '../plan/station-schema'
import type { Problem } from '../problem'
import { exact } from '../schema/exact-members'
import { faultsOf } from '../schema/faults'
import { valueWords } from '../schema/limit'
import { type KnownIds, oneOf } from '../schema/plain-values'
import { isObject, MOST_FAULTS, members, type Schema } from '../schema/schema'
import { toHazard, toLine, toStation } from './file-features'
import { type FeatureKind, kindOf, repeatedIds } from './known-ids'
import { type LineEnds, lineFaults, soundEnds, soundPosition } from './line-faults'

export function featuresOf(value: unknown, faults: Problem[]): readonly unknown[] | undefined {
  if (Array.isArray(value)) return value
  const message = `The list of features is ${valueWords(value)}: give a list in square brackets.`
  faults.push({ code: value === undefined ? 'missing' : 'wrong-type', at: 'features', message })
  return undefined
}

/** What a feature of another program's must be to be kept. */
const FOREIGN = members('The feature', { type: oneOf('The type', ['Feature']) })

const NONE: ReadonlySet<unknown> = new Set()

export interface ParsedFeatures {
  readonly stations: ReadonlyMap<StationId, Station>
  readonly lines: ReadonlyMap<LineId, Line>
  readonly hazards: ReadonlyMap<HazardId, Hazard>
  /** Features of kinds that are not known, as they came. */
  readonly foreign: readonly unknown[]
  /** The ends of every line whose two ends are sound, whatever else may be wrong with it. */
  readonly ends: ReadonlyMap<LineId, LineEnds>
}

export function parseFeatures(
  features: readonly unknown[],
  known: KnownIds,
  faults: Problem[],
): ParsedFeatures {
  const indices = new Map<FeatureKind | undefined, number[]>()
  features.forEach((value, index) => {
    const kind = kindOf(value)
    const before = indices.get(kind)
    if (before) before.push(index)
    else indices.set(kind, [index])
  })
  const ofKind = (kind: FeatureKind | undefined) => indices.get(kind) ?? []
  /** Looks at the features of a kind, and gives the sound ones on, as far as faults are told. */
  const look = (
    kind: FeatureKind | undefined,
    schema: Schema,
    sound: (value: unknown) => void,
    faultsBeside?: (value: unknown, at: string) => void,
  ) => {
    for (const index of ofKind(kind)) {
      if (faults.length > MOST_FAULTS) return
      const before = faults.length
      const at = `features[${index}]`
      faults.push(...faultsOf(schema, features[index], at, known))
      faultsBeside?.(features[index], at)
      if (faults.length === before) sound(features[index])
    }
  }

  const positions = new Map<unknown, Position>()
  for (const index of ofKind('station')) {
    const value = features[index]
    const position = soundPosition(value)
    if (position && isObject(value)) positions.set(value.id, position)
  }
  const ends = new Map<LineId, LineEnds>()
  for (const index of ofKind('line')) {
    const line = soundEnds(features[index], known.station ?? NONE)
    if (line) ends.set(line.id, line)
  }

  const stations = new Map<StationId, Station>()
  look('station', STATION.schema, (value) => keep(stations, toStation(value)))
  const lines = new Map<LineId, Line>()
  const faultsOfLine = (value: unknown, at: string) => lineFaults(value, at, positions, faults)
  look('line', LINE.schema, (value) => keep(lines, toLine(value, stations)), faultsOfLine)
  const hazards = new Map<HazardId, Hazard>()
  look('hazard', HAZARD.schema, (value) => keep(hazards, toHazard(value)))
  const foreign: unknown[] = []
  look(undefined, FOREIGN, (value) => foreign.push(exact(value)))
  repeatedIds(features, 'features', faults)
  return { stations, lines, hazards, foreign, ends }
}

const keep = <Id, T extends { readonly id: Id }>(things: Map<Id, T>, thing: T) =>
  void things.set(thing.id, thing)
