import type { CircuitModel } from './circuit-model'
import type { Conditions } from './conditions'
import { dcCall } from './dc-call'
import type { LoopRow } from './rows'
import { type Port, supplyPorts } from './supply-ports'
import { terminalsOf } from './terminals'

const loopRow = (model: CircuitModel, call: readonly [number, number], which: 0 | 1, mA: number): LoopRow => {
  const name = (index: number) => model.stations[model.sets[index]!.node]!
  return {
    call: [name(call[0]), name(call[1])],
    station: name(call[which]),
    mA,
    minMA: model.sets[call[which]]!.set.offHook.minMA,
  }
}

/** Direct current through both sets of every call; none without a supply, nor from a board, which sends none. */
export function loopRows(model: CircuitModel, conditions: Conditions): LoopRow[] {
  if (model.supply?.supply.kind === 'board') return []
  const ports = supplyPorts(model)
  return ports.length > 0 ? portLoopRows(model, ports, conditions) : sharedLoopRows(model, conditions)
}

/** On a circuit with a feed bridged across it, or with a battery in one leg of a set. */
function sharedLoopRows(model: CircuitModel, conditions: Conditions): LoopRow[] {
  if (!model.supply) return []
  const terminals = terminalsOf(model, conditions, 0)
  const series = model.supply.supply.kind === 'series'
  const rows: LoopRow[] = []
  for (let i = 0; i < model.sets.length; i++) {
    for (let j = i + 1; j < model.sets.length; j++) {
      const call = [i, j] as const
      if (series && !call.some((index) => model.sets[index]!.node === model.supply!.node)) continue
      const currents = dcCall(model, conditions, terminals, call).mA
      rows.push(loopRow(model, call, 0, currents[0]!), loopRow(model, call, 1, currents[1]!))
    }
  }
  return rows
}

/** Through a unit with ports: each has a copy of the source, and direct current never passes between them. */
function portLoopRows(model: CircuitModel, ports: readonly Port[], conditions: Conditions): LoopRow[] {
  const impedances = ports.map(({ circuit }) => terminalsOf(circuit, conditions, 0))
  const place = new Map<number, { port: number; index: number }>()
  for (const [port, { setIndices }] of ports.entries()) {
    for (const [index, set] of setIndices.entries()) place.set(set, { port, index })
  }
  const currents = (port: number, indices: readonly number[]) =>
    dcCall(ports[port]!.circuit, conditions, impedances[port]!, indices).mA
  const alone = model.sets.map((_, set) => {
    const { port, index } = place.get(set)!
    return currents(port, [index])[0]!
  })
  const rows: LoopRow[] = []
  for (let i = 0; i < model.sets.length; i++) {
    for (let j = i + 1; j < model.sets.length; j++) {
      const a = place.get(i)!
      const b = place.get(j)!
      const [near, far] = a.port === b.port ? currents(a.port, [a.index, b.index]) : [alone[i], alone[j]]
      rows.push(loopRow(model, [i, j], 0, near!), loopRow(model, [i, j], 1, far!))
    }
  }
  return rows
}
