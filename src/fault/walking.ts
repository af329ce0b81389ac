import type { CircuitModel } from '../budget/circuit-model'
import { shortestWay } from '../budget/path'
import { isReading, type Known } from './evidence'
import type { Bench } from './observation'

/** A place of a circuit: a station, or so much wire from a line's `from`. */
export type Place = string | PlaceOnLine

export interface PlaceOnLine {
  readonly line: string
  readonly wireM: number
}

/** How far it is along the wire from one place to another, m. */
export type Apart = (from: Place, to: Place) => number

export function apartIn(model: CircuitModel): Apart {
  const known = new Map<number, number>()
  const between = (a: number, b: number): number => {
    const key = Math.min(a, b) * model.stations.length + Math.max(a, b)
    const before = known.get(key)
    if (before !== undefined) return before
    const way = shortestWay(model, a, b)
    const found = way ? way.reduce((sum, { wireM }) => sum + wireM, 0) : Number.POSITIVE_INFINITY
    known.set(key, found)
    return found
  }
  const lines = new Map(model.lines.filter(({ wireM }) => wireM > 0).map((line) => [line.id, line]))
  const endsOf = (place: Place): readonly { readonly node: number; readonly offM: number }[] => {
    if (typeof place === 'string') return [{ node: model.stations.indexOf(place), offM: 0 }]
    const line = lines.get(place.line)!
    return [
      { node: line.from, offM: place.wireM },
      { node: line.to, offM: Math.max(0, line.wireM - place.wireM) },
    ]
  }
  return (from, to) => {
    if (typeof from !== 'string' && typeof to !== 'string' && from.line === to.line)
      return Math.abs(from.wireM - to.wireM)
    let least = Number.POSITIVE_INFINITY
    for (const start of endsOf(from))
      for (const end of endsOf(to))
        least = Math.min(least, start.offM + end.offM + between(start.node, end.node))
    return least
  }
}

/** Where the crew stands: where it last measured or looked, else at the first telephone. */
export function standsAt({ model }: Bench, evidence: readonly Known[], apart: Apart): Place {
  let at: Place = model.stations[model.sets[0]?.node ?? model.lines[0]!.from]!
  for (const each of evidence) {
    if ('sound' in each) {
      const { line, fromM, toM } = each.sound
      const ends = [fromM, toM].map((wireM) => ({ line, wireM }))
      const start: Place = at
      at = ends.sort((a: PlaceOnLine, b: PlaceOnLine): number => apart(start, b) - apart(start, a))[0]!
    } else if (isReading(each) || 'murray' in each || 'varley' in each)
      at = 'line' in each ? { line: each.line, wireM: each.wireM } : each.at
  }
  return at
}
