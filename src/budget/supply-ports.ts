import { memoryOfEach } from '../memo'
import type { CircuitModel } from './circuit-model'
import { isSwitchboard } from './trunk-ends'

/** One side of a ringdown unit, one port of a board or an exchange: a circuit of its own, in which the unit's station is node 0. */
export interface Port {
  readonly circuit: CircuitModel
  /** Which sets of the whole circuit hang on it, in the order of `circuit.sets`. */
  readonly setIndices: readonly number[]
}

/**
 * The pieces into which a circuit falls when one station is taken out, each with that station as a node of its own; and one
 * more, without lines, for a set at the station itself.
 */
function portsAt(model: CircuitModel, station: number): readonly Port[] {
  const around: number[][] = model.stations.map(() => [])
  for (const [k, line] of model.lines.entries()) {
    around[line.from]!.push(k)
    around[line.to]!.push(k)
  }
  const { shapedAs: _, ...others } = model
  const taken = new Set<number>()
  const ports: Port[] = []
  const portOf = (lines: readonly number[]): Port => {
    const nodes = new Map<number, number>([[station, 0]])
    const nodeOf = (old: number): number => {
      const index = nodes.get(old) ?? nodes.size
      nodes.set(old, index)
      return index
    }
    const own = lines.map((k) => {
      const line = model.lines[k]!
      return { ...line, from: nodeOf(line.from), to: nodeOf(line.to) }
    })
    // Without lines it is the port of the station's own set; on every other port the station is a joint.
    const setIndices = [...model.sets.keys()].filter((k) => {
      const { node } = model.sets[k]!
      return lines.length === 0 ? node === station : node !== station && nodes.has(node)
    })
    return {
      circuit: {
        ...others,
        stations: [...nodes.keys()].map((old) => model.stations[old]!),
        lines: own,
        sets: setIndices.map((k) => ({ node: nodes.get(model.sets[k]!.node)!, set: model.sets[k]!.set })),
        supply: model.supply && { ...model.supply, node: 0 },
      },
      setIndices,
    }
  }
  for (const first of around[station]!) {
    if (taken.has(first)) continue
    const piece: number[] = []
    const queue = [first]
    taken.add(first)
    for (let next = queue.pop(); next !== undefined; next = queue.pop()) {
      piece.push(next)
      const line = model.lines[next]!
      for (const end of [line.from, line.to]) {
        if (end === station) continue
        for (const other of around[end]!) {
          if (taken.has(other)) continue
          taken.add(other)
          queue.push(other)
        }
      }
    }
    ports.push(portOf(piece))
  }
  if (model.sets.some(({ node }) => node === station)) ports.push(portOf([]))
  return ports
}

const remembered = memoryOfEach<CircuitModel, readonly Port[]>()

/** The ports of a circuit with a ringdown unit, a board or an exchange; none for every other circuit. */
export function supplyPorts(model: CircuitModel): readonly Port[] {
  const { supply } = model
  if (supply?.supply.kind !== 'ringdown' && !isSwitchboard(supply?.supply)) return []
  return remembered(model, [], () => portsAt(model, supply!.node))
}

/** Whether a port is that of the set at the supply's own station, with no line between. */
export const isAtSupply = ({ circuit }: Port): boolean => circuit.lines.length === 0

/** A circuit with a port joined on at one of its nodes, where a cord joins them: the port's sets come last. */
export function joinedAt(circuit: CircuitModel, at: number, port: CircuitModel): CircuitModel {
  const placed = (node: number) => (node === 0 ? at : node + circuit.stations.length - 1)
  const { coils: _, ...others } = circuit
  return {
    ...others,
    stations: [...circuit.stations, ...port.stations.slice(1)],
    lines: [
      ...circuit.lines,
      ...port.lines.map((line) => ({ ...line, from: placed(line.from), to: placed(line.to) })),
    ],
    sets: [...circuit.sets, ...port.sets.map(({ node, set }) => ({ node: placed(node), set }))],
  }
}

/** On which port each set hangs, in the order of `sets`; all on one where the supply has no ports. */
export function portOfEachSet(model: CircuitModel): readonly number[] {
  const portOf = model.sets.map(() => 0)
  for (const [port, { setIndices }] of supplyPorts(model).entries())
    for (const set of setIndices) portOf[set] = port
  return portOf
}
