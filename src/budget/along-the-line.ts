import type { CircuitModel } from './circuit-model'
import type { Conditions } from './conditions'
import { callsFrom } from './dc-call'
import { cutAlong, type PathPoint, shortestWay } from './path'
import { ringingSides, ringVoltsFrom } from './ringing'
import { supplyPorts } from './supply-ports'
import { terminalsOf } from './terminals'

/** Each line of the way is shown in so many stretches. */
const STRETCHES = 12

/** Volts along the wire from the source to one set. */
export interface AlongPoint {
  readonly wireM: number
  readonly station: string | null
  readonly volts: number
}

/** The circuit itself, or the side of a ringdown unit on which a station hangs, with the station's node in it. */
function sideOf(
  model: CircuitModel,
  station: string,
): { circuit: CircuitModel; node: number; set: number } | undefined {
  const sides = supplyPorts(model).map(({ circuit }) => circuit)
  for (const circuit of sides.length > 0 ? sides : [model]) {
    const set = circuit.sets.findIndex(({ node }) => circuit.stations[node] === station)
    if (set !== -1) return { circuit, node: circuit.sets[set]!.node, set }
  }
  return undefined
}

function cutTo(circuit: CircuitModel, from: number, to: number) {
  const way = shortestWay(circuit, from, to)
  return way && cutAlong(circuit, from, way, STRETCHES)
}

const along = (points: readonly PathPoint[], voltsAt: (node: number) => number): AlongPoint[] =>
  points.map(({ node, wireM, station }) => ({ wireM, station, volts: voltsAt(node) }))

/**
 * Rms ring volts across the pair at places along the wire, from the station that rings to the one that is rung. Empty where the
 * first rings nothing at the second.
 */
export function ringVoltsAlong(
  model: CircuitModel,
  conditions: Conditions,
  from: string,
  to: string,
): AlongPoint[] {
  for (const { circuit, generators } of ringingSides(model)) {
    const node = circuit.sets.find((set) => circuit.stations[set.node] === to)?.node
    const generator = generators.find((each) => circuit.stations[each.node] === from)
    const cut = node !== undefined && generator && cutTo(circuit, generator.node, node)
    if (!cut) continue
    const nodes = cut.points.map((point) => point.node)
    const terminals = terminalsOf(cut.model, conditions, generator.hz, nodes)
    return along(cut.points, ringVoltsFrom(terminals, generator, conditions))
  }
  return []
}

/**
 * DC volts across the pair at places along the wire, from the supply to one set, while that set is off hook (on a series battery,
 * together with the set that carries it). Empty without a supply.
 */
export function dcVoltsAlong(model: CircuitModel, conditions: Conditions, to: string): AlongPoint[] {
  const side = model.supply ? sideOf(model, to) : undefined
  if (!side?.circuit.supply) return []
  const { supply, node } = side.circuit.supply
  const cut = cutTo(side.circuit, node, side.node)
  const carrier = side.circuit.sets.findIndex((set) => set.node === node)
  const series = supply.kind === 'series'
  if (!cut || (series && (carrier === -1 || carrier === side.set))) return []
  const nodes = cut.points.map((point) => point.node)
  const terminals = terminalsOf(cut.model, conditions, 0, nodes)
  const sets = series ? [carrier, side.set] : [side.set]
  return along(cut.points, callsFrom(cut.model, conditions, terminals)(sets).voltsAt)
}
