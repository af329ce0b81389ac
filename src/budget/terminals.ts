import type { Wire } from '../catalog/wire'
import { memoryOfEach } from '../memo'
import type { CircuitModel } from './circuit-model'
import type { Conditions } from './conditions'
import { type Elimination, planElimination } from './elimination'
import { constantsOf } from './line-constants'
import { type Admittances, addPi, addShunt, emptyAdmittances, factorNetwork, voltagesFrom } from './network'
import { onHookSiemens } from './ringer'
import { type Kilometre, kilometreOf, piOf } from './uniform-line'

const remembered = memoryOfEach<CircuitModel['lines'], Elimination>()

const shapeOf = ({ lines, stations, shapedAs = lines }: CircuitModel): Elimination =>
  remembered(shapedAs, [], () => planElimination(stations.length, lines))

/**
 * The lines and every on-hook ringer of a circuit at one frequency, seen from its sets and its supply: impedance between each two
 * of those places, Ω. All three budgets start from this and lay their own loads and sources across it.
 */
export interface Terminals {
  /** Place of a node among the terminals, −1 where nothing stands. */
  readonly terminalOfNode: readonly number[]
  /** Volts at every terminal for 1 A fed in at one, by terminal: reckoned when first asked for. */
  readonly column: (terminal: number) => Column
}

export interface Column {
  readonly re: readonly number[]
  readonly im: readonly number[]
}

/** @param more nodes to be seen besides those of the sets and the supply */
export function terminalsOf(
  model: CircuitModel,
  conditions: Conditions,
  hz: number,
  more: readonly number[] = [],
): Terminals {
  const factors = factorNetwork(shapeOf(model), admittancesOf(model, conditions, hz))
  const terminalOfNode = new Array<number>(model.stations.length).fill(-1)
  const nodes: number[] = []
  const places = [
    ...model.sets.map(({ node }) => node),
    ...(model.supply ? [model.supply.node] : []),
    ...more,
  ]
  for (const node of places) {
    if (terminalOfNode[node] !== -1) continue
    terminalOfNode[node] = nodes.length
    nodes.push(node)
  }
  const columns: Column[] = []
  const column = (terminal: number): Column => {
    const known = columns[terminal]
    if (known) return known
    const volts = voltagesFrom(factors, nodes[terminal]!)
    const own = { re: nodes.map((node) => volts.re[node]!), im: nodes.map((node) => volts.im[node]!) }
    columns[terminal] = own
    return own
  }
  return { terminalOfNode, column }
}

function admittancesOf(model: CircuitModel, conditions: Conditions, hz: number): Admittances {
  const shape = shapeOf(model)
  const y = emptyAdmittances(shape)
  // Most lines are of a wire or two: what a kilometre of it does is reckoned once.
  const byPair = new Map<Wire, Kilometre>()
  const byEarth = new Map<Wire, Kilometre>()
  for (let k = 0; k < model.lines.length; k++) {
    const line = model.lines[k]!
    const kilometres = line.electrodeOhms ? byEarth : byPair
    const isOfItsOwn = line.worn || line.splices
    let kilometre = isOfItsOwn ? undefined : kilometres.get(line.wire)
    if (!kilometre) {
      kilometre = kilometreOf(constantsOf(line, conditions), hz)
      if (!isOfItsOwn) kilometres.set(line.wire, kilometre)
    }
    const km = (line.wireM * conditions.lengthFactor) / 1000
    addPi(y, shape.branchOfEdge[k]!, line, piOf(kilometre, km, line.electrodeOhms))
  }
  for (const { node, set } of model.sets) addShunt(y, node, onHookSiemens(set, hz))
  return y
}
