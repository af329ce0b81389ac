import type { Country } from './country'
import {
  type CircuitDesign,
  isThere,
  jointsOf,
  type NetDesign,
  runOf,
  takenBy,
  type WiredEdge,
} from './net-design'
import { edge, sideOf } from './net-shapes'
import { isPlain } from './runs'

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
  const withRuns = (changed: ReadonlyMap<number, number>): CircuitDesign => ({
    ...circuit,
    edges: edges.map((each, k) => ({ ...each, run: changed.get(k) ?? each.run })),
  })
  for (const [k, each] of edges.entries())
    for (const run of country.runs(...each.edge).keys())
      if (run !== each.run) yield withRuns(new Map([[k, run]]))
  // Two edges that change their wires: what each of them alone has not enough of.
  for (const [i, one] of edges.entries())
    for (const [j, two] of edges.entries()) {
      const kind = (each: WiredEdge) => runOf(country, each)[0]!.kinds[0]!
      if (j <= i || kind(one) === kind(two)) continue
      const plain = (each: WiredEdge, wanted: number) =>
        country.runs(...each.edge).findIndex((run) => isPlain(run) && run[0]!.kinds[0] === wanted)
      const [a, b] = [plain(one, kind(two)), plain(two, kind(one))]
      if (a < 0 || b < 0) continue
      yield withRuns(
        new Map([
          [i, a],
          [j, b],
        ]),
      )
    }
  // Wire of one pool is used one way in a net: where it is to be another, all of it changes together.
  for (const kind of country.wires.keys()) {
    const all = edges.map(({ edge: [a, b] }) =>
      country.runs(a, b).findIndex((run) => isPlain(run) && run[0]!.kinds[0] === kind),
    )
    if (edges.length > 1 && all.every((run) => run >= 0)) yield withRuns(new Map(all.entries()))
  }
}

/** One edge in the place of another; and of a ring, one edge less. */
function* otherEdges(country: Country, circuit: CircuitDesign): Generator<CircuitDesign> {
  const { edges } = circuit
  // Lines of a joint in the open stay together.
  if (jointsOf(circuit).length > 0) return
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
        for (const [run, parts] of country.runs(...other).entries())
          if (parts.every(({ kinds }) => kinds.length === 1))
            yield { ...circuit, edges: [...left, { edge: other, run }] }
      }
  }
}
