import type { Position } from '../geo/position'
import type { HazardId, LineId, StationId } from '../plan/id'
import type { Hazard, Line, Station } from '../plan/plan'
import { type Check, members, oneOf } from '../plan/shape'
import type { Problem } from '../problem'
import { valueWords } from '../schema/limit'
import { isObject, MOST_FAULTS } from '../schema/schema'
import { exact } from './exact-members'
import { type FeatureKind, type KnownIds, kindOf, repeatedIds } from './known-ids'
import { type LineEnds, lineFaults, soundEnds, soundPosition } from './line-faults'
import { HAZARD_SHAPE, toHazard } from './parse-hazard'
import { lineShape, toLine } from './parse-line'
import { STATION_SHAPE, toStation } from './parse-station'

export function featuresOf(value: unknown, faults: Problem[]): readonly unknown[] {
  if (Array.isArray(value)) return value
  const message = `The list of features is ${valueWords(value)}: give a list in square brackets.`
  faults.push({ code: value === undefined ? 'missing' : 'wrong-type', at: 'features', message })
  return []
}

/** What a feature of another program's must be to be kept. */
const FOREIGN_SHAPE = members('The feature', { type: oneOf('The type', ['Feature']) })

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
  const look = (kind: FeatureKind | undefined, check: Check, sound: (value: unknown) => void) => {
    for (const index of ofKind(kind)) {
      if (faults.length > MOST_FAULTS) return
      const before = faults.length
      check(features[index], `features[${index}]`, faults)
      if (faults.length === before) sound(features[index])
    }
  }
  /** Turns the sound features of a kind into the plan's. */
  const parse = <T extends { readonly id: string }>(
    kind: FeatureKind,
    check: Check,
    toThing: (value: unknown) => T,
  ) => {
    const things = new Map<T['id'], T>()
    look(kind, check, (value) => {
      const thing = toThing(value)
      things.set(thing.id, thing)
    })
    return things
  }

  const positions = new Map<unknown, Position>()
  for (const index of ofKind('station')) {
    const value = features[index]
    const position = soundPosition(value)
    if (position && isObject(value)) positions.set(value.id, position)
  }
  const ends = new Map<LineId, LineEnds>()
  for (const index of ofKind('line')) {
    const line = soundEnds(features[index], known.stations)
    if (line) ends.set(line.id, line)
  }

  const stations = parse('station', STATION_SHAPE, toStation)
  const shapeOfLine = lineShape(known)
  const checkLine: Check = (value, at, found) => {
    shapeOfLine(value, at, found)
    lineFaults(value, at, positions, found)
  }
  const lines = parse('line', checkLine, (value) => toLine(value, stations))
  const hazards = parse('hazard', HAZARD_SHAPE, toHazard)
  const foreign: unknown[] = []
  look(undefined, FOREIGN_SHAPE, (value) => foreign.push(exact(value)))
  repeatedIds(features, 'features', faults)
  return { stations, lines, hazards, foreign, ends }
}
