import { memoryOfEach } from '../memo'
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

const remembered = memoryOfEach<CircuitModel['lines'], readonly (readonly ModelLine[])[]>()

/** The lines at each node. */
const linesAround = ({ lines, stations }: CircuitModel) =>
  remembered(lines, [stations], () => {
    const around: ModelLine[][] = stations.map(() => [])
    for (const line of lines) {
      around[line.from]!.push(line)
      if (line.to !== line.from) around[line.to]!.push(line)
    }
    return around
  })

/**
 * Every node that a way leads to from one, nearest first, by wire; not beyond `to`, where one is named.
 *
 * Source: E. W. Dijkstra, A note on two problems in connexion with graphs, Numerische Mathematik 1 (1959), problem 2; with a binary heap.
 */
function reachedFrom(model: CircuitModel, from: number, to?: number): ReadonlyMap<number, Reached> {
  const around = linesAround(model)
  const reached = new Map<number, Reached>([[from, { metres: 0, by: null }]])
  const done = new Set<number>()
  const heap = [{ node: from, metres: 0 }]
  for (let nearest = takeNearest(heap); nearest && nearest.node !== to; nearest = takeNearest(heap)) {
    const { node } = nearest
    if (done.has(node)) continue
    done.add(node)
    for (const line of around[node]!) {
      const next = line.from === node ? line.to : line.from
      const metres = nearest.metres + line.wireM
      if (done.has(next) || metres >= (reached.get(next)?.metres ?? Number.POSITIVE_INFINITY)) continue
      reached.set(next, { metres, by: line })
      putIn(heap, { node: next, metres })
    }
  }
  return reached
}

interface Waiting {
  readonly node: number
  readonly metres: number
}

function putIn(heap: Waiting[], each: Waiting): void {
  let at = heap.push(each) - 1
  while (at > 0) {
    const above = (at - 1) >> 1
    if (heap[above]!.metres <= each.metres) break
    heap[at] = heap[above]!
    at = above
  }
  heap[at] = each
}

function takeNearest(heap: Waiting[]): Waiting | undefined {
  const nearest = heap[0]
  const last = heap.pop()
  if (!last || heap.length === 0) return nearest
  let at = 0
  for (;;) {
    let below = 2 * at + 1
    if (below + 1 < heap.length && heap[below + 1]!.metres < heap[below]!.metres) below++
    if (below >= heap.length || heap[below]!.metres >= last.metres) break
    heap[at] = heap[below]!
    at = below
  }
  heap[at] = last
  return nearest
}

/** The lines of the shortest way between two nodes, by wire, from the first to the last; null where there is none. */
export function shortestWay(model: CircuitModel, from: number, to: number): readonly ModelLine[] | null {
  const reached = reachedFrom(model, from, to)
  if (!reached.has(to)) return null
  const way: ModelLine[] = []
  for (let node = to; node !== from; ) {
    const line = reached.get(node)!.by!
    way.push(line)
    node = line.from === node ? line.to : line.from
  }
  return way.reverse()
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
  const onWay = new Set(way)
  const lines = model.lines.filter((line) => !onWay.has(line))
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
