import type { Catalog } from '../catalog/catalog'
import type { Supply } from '../catalog/supply'
import type { TelephoneSet } from '../catalog/telephone-set'
import type { Wire } from '../catalog/wire'
import type { MeasuredLine } from '../measure/measured'
import type { LineId } from '../plan/id'
import type { Circuit, Plan } from '../plan/plan'

export interface ModelLine {
  readonly id: string
  /** Indices into `stations`. */
  readonly from: number
  readonly to: number
  readonly wire: Wire
  readonly wireM: number
  /** Ohms of the two electrodes of an earth return; null for a pair. */
  readonly electrodeOhms: readonly [number, number] | null
}

export interface ModelSet {
  readonly node: number
  readonly set: TelephoneSet
}

/** One circuit as a network: stations are nodes by index, lines join them, sets and the supply stand at them. */
export interface CircuitModel {
  readonly stations: readonly string[]
  readonly lines: readonly ModelLine[]
  readonly sets: readonly ModelSet[]
  readonly supply: { readonly supply: Supply; readonly node: number } | null
}

const known = <T>(value: T | undefined, what: string): T => {
  if (value === undefined) throw new Error(`the plan names ${what}, which nothing defines`)
  return value
}

/** The network of one circuit of a checked plan. Throws where the plan names what does not exist. */
export function circuitModel(
  plan: Plan,
  circuit: Circuit,
  catalog: Catalog,
  measured: ReadonlyMap<LineId, MeasuredLine>,
): CircuitModel {
  const nodes = new Map<string, number>()
  const nodeOf = (station: string): number => {
    const index = nodes.get(station) ?? nodes.size
    nodes.set(station, index)
    return index
  }
  const lines = circuit.lines.map((id): ModelLine => {
    const line = known(plan.lines.get(id), `line ${id}`)
    return {
      id,
      from: nodeOf(line.from),
      to: nodeOf(line.to),
      wire: known(catalog.wires.get(line.wire), `wire ${line.wire}`),
      wireM: known(measured.get(id), `line ${id}`).wireM,
      electrodeOhms: line.return === 'earth' ? (line.electrodeOhms ?? [0, 0]) : null,
    }
  })
  const sets = [...circuit.sets].map(([station, type]) => ({
    node: nodeOf(station),
    set: known(catalog.sets.get(type), `set ${type}`),
  }))
  const supply = circuit.supply && {
    supply: known(catalog.supplies.get(circuit.supply.type), `supply ${circuit.supply.type}`),
    node: nodeOf(circuit.supply.at),
  }
  return { stations: [...nodes.keys()], lines, sets, supply }
}

/** One side of a ringdown unit: a circuit of its own, in which the unit's station is node 0. */
export interface Port {
  readonly circuit: CircuitModel
  /** Which sets of the whole circuit hang on it, in the order of `circuit.sets`. */
  readonly setIndices: readonly number[]
}

/**
 * The pieces into which a circuit falls when one station is taken out, each with that station as a node of its own; and one
 * more, without lines, for a set at the station itself.
 */
export function portsAt(model: CircuitModel, station: number): readonly Port[] {
  const around: number[][] = model.stations.map(() => [])
  for (const [k, line] of model.lines.entries()) {
    around[line.from]!.push(k)
    around[line.to]!.push(k)
  }
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
