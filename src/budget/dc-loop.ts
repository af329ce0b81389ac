import type { CircuitModel } from './circuit-model'
import type { Conditions } from './conditions'
import { callsFrom } from './dc-call'
import type { TakeFigure } from './rows'
import { type Port, supplyPorts } from './supply-ports'
import { terminalsOf } from './terminals'

/** Direct current through both sets of every call, mA; none without a supply, nor from a board, which sends none. */
export function eachLoop(model: CircuitModel, conditions: Conditions, take: TakeFigure): void {
  const { supply, sets, stations } = model
  if (!supply || supply.supply.kind === 'board') return
  const currents = currentsOf(model, conditions)
  for (let i = 0; i < sets.length; i++) {
    const one = sets[i]!
    for (let j = i + 1; j < sets.length; j++) {
      const other = sets[j]!
      const mA = currents(i, j)
      if (!mA) continue
      const [from, to] = [stations[one.node]!, stations[other.node]!]
      take(from, to, from, mA[0]!, one.set.offHook.minMA)
      take(from, to, to, mA[1]!, other.set.offHook.minMA)
    }
  }
}

/** mA through both sets of a call, by their places among the sets; undefined where there can be no such call. */
type Currents = (one: number, other: number) => readonly number[] | undefined

function currentsOf(model: CircuitModel, conditions: Conditions): Currents {
  const ports = supplyPorts(model)
  if (ports.length > 0) return currentsOverPorts(model, ports, conditions)
  // On a circuit with a feed bridged across it, or with a battery in one leg of a set.
  const call = callsFrom(model, conditions, terminalsOf(model, conditions, 0))
  const { supply, node } = model.supply!
  const carries = (set: number) => supply.kind !== 'series' || model.sets[set]!.node === node
  return (one, other) => (carries(one) || carries(other) ? call([one, other]).mA : undefined)
}

/** Through a unit with ports: each has a copy of the source, and direct current never passes between them. */
function currentsOverPorts(model: CircuitModel, ports: readonly Port[], conditions: Conditions): Currents {
  const calls = ports.map(({ circuit }) =>
    callsFrom(circuit, conditions, terminalsOf(circuit, conditions, 0)),
  )
  const place = new Map<number, { port: number; index: number }>()
  for (const [port, { setIndices }] of ports.entries()) {
    for (const [index, set] of setIndices.entries()) place.set(set, { port, index })
  }
  const alone = model.sets.map((_, set) => {
    const { port, index } = place.get(set)!
    return calls[port]!([index]).mA[0]!
  })
  return (one, other) => {
    const a = place.get(one)!
    const b = place.get(other)!
    return a.port === b.port ? calls[a.port]!([a.index, b.index]).mA : [alone[one]!, alone[other]!]
  }
}
