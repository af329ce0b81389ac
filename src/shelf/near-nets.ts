import type { Country } from './country'
import { type CircuitDesign, isThere, type NetDesign, takenBy, type WiredEdge } from './net-design'
import { edge, sideOf } from './net-shapes'

/** Every net that one change makes of another, as far as there is what it takes. */
export function* nearNets(country: Country, design: NetDesign): Generator<NetDesign> {
  for (const [k, circuit] of design.entries())
    for (const changed of nearCircuits(country, circuit)) {
      const net = design.map((each, i) => (i === k ? changed : each))
      if (isThere(country, takenBy(country, net))) yield net
    }
  yield* setsAcross(design)
}

/** Telephones of two circuits in each other's place. */
function* setsAcross(design: NetDesign): Generator<NetDesign> {
  for (const [i, one] of design.entries())
    for (const [j, two] of design.entries()) {
      if (j <= i) continue
      for (const [a, first] of one.sets)
        for (const [b, second] of two.sets) {
          if (first === second) continue
          yield design.map((each, k) =>
            k === i
              ? { ...one, sets: new Map([...one.sets, [a, second]]) }
              : k === j
                ? { ...two, sets: new Map([...two.sets, [b, first]]) }
                : each,
          )
        }
    }
}

function* nearCircuits(country: Country, circuit: CircuitDesign): Generator<CircuitDesign> {
  yield* otherSupplies(country, circuit)
  yield* otherSets(country, circuit)
  yield* otherWires(country, circuit)
  yield* otherEdges(country, circuit)
}

function* otherSupplies({ supplies }: Country, circuit: CircuitDesign): Generator<CircuitDesign> {
  if (circuit.supply) yield { ...circuit, supply: null }
  for (const kind of supplies.keys())
    for (const at of circuit.sets.keys())
      if (kind !== circuit.supply?.kind || at !== circuit.supply.at)
        yield { ...circuit, supply: { kind, at } }
}

function* otherSets(country: Country, circuit: CircuitDesign): Generator<CircuitDesign> {
  const places = [...circuit.sets]
  for (const [i, [a, first]] of places.entries()) {
    for (const [b, second] of places.slice(i + 1))
      if (first !== second) yield { ...circuit, sets: new Map([...circuit.sets, [a, second], [b, first]]) }
    for (const set of country.sets.keys())
      if (set !== first) yield { ...circuit, sets: new Map([...circuit.sets, [a, set]]) }
  }
}

function* otherWires(country: Country, circuit: CircuitDesign): Generator<CircuitDesign> {
  const { edges } = circuit
  const withEdge = (k: number, runs: readonly number[]): CircuitDesign => ({
    ...circuit,
    edges: edges.map((each, i) => (i === k ? { ...each, runs } : each)),
  })
  for (const [k, each] of edges.entries()) {
    const all = country.runs(...each.edge)
    for (const run of all.keys()) if (each.runs.length > 1 || run !== each.runs[0]) yield withEdge(k, [run])
    for (const first of all.keys())
      for (let second = first; second < all.length; second++)
        if (all[first]!.length === 1 && all[second]!.length === 1) yield withEdge(k, [first, second])
  }
  // Two edges that change their wires: what each of them alone has not enough of.
  for (const [i, one] of edges.entries())
    for (const [j, two] of edges.entries()) {
      const kind = (each: WiredEdge) => country.runs(...each.edge)[each.runs[0]!]![0]!.kind
      if (j <= i || kind(one) === kind(two)) continue
      const plain = (each: WiredEdge, wanted: number) =>
        country.runs(...each.edge).findIndex((run) => run.length === 1 && run[0]!.kind === wanted)
      const [a, b] = [plain(one, kind(two)), plain(two, kind(one))]
      if (a < 0 || b < 0) continue
      yield {
        ...circuit,
        edges: edges.map((each, k) =>
          k === i ? { ...each, runs: [a] } : k === j ? { ...each, runs: [b] } : each,
        ),
      }
    }
}

/** One edge in the place of another; and of a ring, one edge less. */
function* otherEdges(country: Country, circuit: CircuitDesign): Generator<CircuitDesign> {
  const { edges } = circuit
  const places = [...circuit.sets.keys()]
  const isRing = edges.length >= places.length
  for (const taken of edges) {
    const left = edges.filter((each) => each !== taken)
    if (isRing) {
      yield { ...circuit, edges: left }
      continue
    }
    const all = edges.map((each) => each.edge)
    const side = sideOf(all, taken.edge)
    for (const a of places)
      for (const b of places) {
        if (!side.has(a) || side.has(b)) continue
        const other = edge(a, b)
        if (other.join() === taken.edge.join()) continue
        for (const run of country.runs(...other).keys())
          yield { ...circuit, edges: [...left, { edge: other, runs: [run] }] }
      }
  }
}
