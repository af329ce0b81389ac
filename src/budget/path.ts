import type { CircuitModel, ModelLine } from './circuit-model'

/** A place along a way through a circuit. */
export interface PathPoint {
  readonly node: number
  /** Wire from the start of the way, m. */
  readonly wireM: number
  /** Station at the place; null in the middle of a line. */
  readonly station: string | null
}

interface Reached {
  readonly metres: number
  readonly by: ModelLine | null
}

/** Every node that a way leads to from one, nearest first, by wire; not beyond `to`, where one is named. */
function reachedFrom(model: CircuitModel, from: number, to?: number): ReadonlyMap<number, Reached> {
  const reached = new Map<number, Reached>([[from, { metres: 0, by: null }]])
  const done = new Set<number>()
  for (;;) {
    let nearest: number | undefined
    for (const [node, { metres }] of reached) {
      if (!done.has(node) && (nearest === undefined || metres < reached.get(nearest)!.metres)) nearest = node
    }
    if (nearest === undefined || nearest === to) return reached
    done.add(nearest)
    for (const line of model.lines) {
      const next = line.from === nearest ? line.to : line.to === nearest ? line.from : undefined
      if (next === undefined || done.has(next)) continue
      const metres = reached.get(nearest)!.metres + line.wireM
      if (metres < (reached.get(next)?.metres ?? Number.POSITIVE_INFINITY))
        reached.set(next, { metres, by: line })
    }
  }
}

/** The lines of the shortest way between two nodes, by wire, from the first to the last; null where there is none. */
export function shortestWay(model: CircuitModel, from: number, to: number): readonly ModelLine[] | null {
  const reached = reachedFrom(model, from, to)
  if (!reached.has(to)) return null
  const way: ModelLine[] = []
  for (let node = to; node !== from; ) {
    const line = reached.get(node)!.by!
    way.unshift(line)
    node = line.from === node ? line.to : line.from
  }
  return way
}

/** The two sets with most wire between them, by the shortest way; null where there are no two. */
export function longestWay(model: CircuitModel): { from: string; to: string; wireM: number } | null {
  let longest: { from: string; to: string; wireM: number } | null = null
  for (const [k, { node }] of model.sets.entries()) {
    const reached = reachedFrom(model, node)
    for (const other of model.sets.slice(k + 1)) {
      const wireM = reached.get(other.node)?.metres
      if (wireM === undefined || wireM <= (longest?.wireM ?? -1)) continue
      longest = { from: model.stations[node]!, to: model.stations[other.node]!, wireM }
    }
  }
  return longest
}

/**
 * The circuit with every line of a way cut into equal stretches, each cut a node of its own, and the places along it. A line cut in
 * stretches is the same line: only the electrodes of an earth return stay at its ends.
 */
export function cutAlong(
  model: CircuitModel,
  from: number,
  way: readonly ModelLine[],
  stretches: number,
): { readonly model: CircuitModel; readonly points: readonly PathPoint[] } {
  const stations = [...model.stations]
  const lines = model.lines.filter((line) => !way.includes(line))
  const points: PathPoint[] = [{ node: from, wireM: 0, station: model.stations[from]! }]
  let node = from
  let wireM = 0
  for (const line of way) {
    const end = line.from === node ? line.to : line.from
    const [near, far] = line.from === node ? [0, 1] : [1, 0]
    for (let k = 1; k <= stretches; k++) {
      const last = k === stretches
      const next = last ? end : stations.push(`${line.id}\n${k}`) - 1
      const electrodeOhms = line.electrodeOhms && [
        k === 1 ? line.electrodeOhms[near as 0 | 1] : 0,
        last ? line.electrodeOhms[far as 0 | 1] : 0,
      ]
      lines.push({
        ...line,
        from: node,
        to: next,
        wireM: line.wireM / stretches,
        electrodeOhms: electrodeOhms as [number, number] | null,
      })
      wireM += line.wireM / stretches
      points.push({ node: next, wireM, station: last ? model.stations[end]! : null })
      node = next
    }
  }
  return { model: { ...model, stations, lines }, points }
}
