import type { CircuitModel } from './circuit-model'
import type { Conditions } from './conditions'
import { type Elimination, planElimination } from './elimination'
import { constantsOf } from './line-constants'
import { addBranch, addShunt, emptyAdmittances, factorNetwork, voltagesFrom } from './network'
import { onHookSiemens } from './ringer'
import { lineChain, piSection } from './uniform-line'

const shapes = new WeakMap<CircuitModel['lines'], Elimination>()

function shapeOf(model: CircuitModel): Elimination {
  const known = shapes.get(model.lines)
  if (known) return known
  const shape = planElimination(
    model.stations.length,
    model.lines.map(({ from, to }) => [from, to] as const),
  )
  shapes.set(model.lines, shape)
  return shape
}

/**
 * The lines and every on-hook ringer of a circuit at one frequency, seen from its sets and its supply: impedance between each two
 * of those places, Ω. All three budgets start from this and lay their own loads and sources across it.
 */
export interface Ports {
  /** Place of a node among the ports, −1 where nothing stands. */
  readonly portOfNode: Int32Array
  readonly count: number
  /** Row-major count × count. */
  readonly re: Float64Array
  readonly im: Float64Array
}

/** @param more nodes to be seen besides those of the sets and the supply */
export function portsOf(
  model: CircuitModel,
  conditions: Conditions,
  hz: number,
  more: readonly number[] = [],
): Ports {
  const shape = shapeOf(model)
  const y = emptyAdmittances(shape)
  for (const [k, line] of model.lines.entries()) {
    const constants = constantsOf(line, conditions)
    const km = (line.wireM * conditions.lengthFactor) / 1000
    const pi = piSection(lineChain(constants, km, hz, line.electrodeOhms ?? undefined))
    addBranch(y, shape.branchOfEdge[k]!, pi.series)
    addShunt(y, line.from, pi.shuntFrom)
    addShunt(y, line.to, pi.shuntTo)
  }
  for (const { node, set } of model.sets) addShunt(y, node, onHookSiemens(set, hz))
  const factors = factorNetwork(shape, y)

  const portOfNode = new Int32Array(model.stations.length).fill(-1)
  const nodes: number[] = []
  const places = [
    ...model.sets.map(({ node }) => node),
    ...(model.supply ? [model.supply.node] : []),
    ...more,
  ]
  for (const node of places) {
    if (portOfNode[node] !== -1) continue
    portOfNode[node] = nodes.length
    nodes.push(node)
  }
  const count = nodes.length
  const re = new Float64Array(count * count)
  const im = new Float64Array(count * count)
  for (const [row, node] of nodes.entries()) {
    const voltages = voltagesFrom(factors, node)
    for (const [column, other] of nodes.entries()) {
      re[row * count + column] = voltages.re[other]!
      im[row * count + column] = voltages.im[other]!
    }
  }
  return { portOfNode, count, re, im }
}
