import type { CircuitModel } from './circuit-model'
import { abs, add, type Complex, complex, divide, multiply, ONE, subtract, ZERO } from './complex'
import type { Conditions } from './conditions'
import { onHookSiemens } from './ringer'
import type { RingingRow } from './rows'
import { supplyPorts } from './supply-ports'
import { type Terminals, terminalsOf } from './terminals'

/** A source with less resistance than this is taken to have it, so that its current stays finite. */
const LEAST_SOURCE_OHM = 1e-6

export interface Generator {
  /** Node at which it drives the circuit. */
  readonly node: number
  readonly volts: number
  readonly hz: number
  readonly ohms: number
  /** Admittance of its own ringer, disconnected while it turns, S; null for a supply, which has none. */
  readonly ownRinger: Complex | null
}

/** Every source that rings on a circuit: the hand generators in the order of the sets, then the supply's ring source. */
export function generatorsOf(model: CircuitModel): Generator[] {
  const cranks = model.sets.flatMap(({ node, set }): Generator[] =>
    set.generator ? [{ node, ...set.generator, ownRinger: onHookSiemens(set, set.generator.hz) }] : [],
  )
  const supply = model.supply
  if (!supply?.supply.ring || supply.supply.kind === 'series') return cranks
  const { volts, hz, ohms } = supply.supply.ring
  return [...cranks, { node: supply.node, volts, hz, ohms, ownRinger: null }]
}

/** Rms volts that a generator raises across the pair, by node. */
export function ringVoltsFrom(
  terminals: Terminals,
  generator: Generator,
  conditions: Conditions,
): (node: number) => number {
  const a = terminals.terminalOfNode[generator.node]!
  const { re, im } = terminals.column(a)
  const ohms = Math.max(generator.ohms, LEAST_SOURCE_OHM)
  const own: Complex = { re: re[a]!, im: im[a]! }
  const load = subtract(complex(1 / ohms), generator.ownRinger ?? ZERO)
  const shortCircuit = (generator.volts * conditions.ringFactor) / ohms
  // v_b = Z_ba · I / (1 + Z_aa · ΔY): the current that is left for the network after the source's own admittance.
  const amps = abs(divide(complex(shortCircuit), add(ONE, multiply(own, load))))
  return (node) => {
    const b = terminals.terminalOfNode[node]!
    return amps * Math.hypot(re[b]!, im[b]!)
  }
}

/**
 * Ring volts: for each hand generator, and for a supply that rings, the rms volts across every other ringer, all bells bridged.
 *
 * A generator's own ringer is disconnected while it turns. From a supply every bell rings, one at the supply's own station too.
 * Ringing never passes from one port of a supply to another.
 */
export function ringingRows(model: CircuitModel, conditions: Conditions): RingingRow[] {
  const ports = supplyPorts(model)
  return ports.length > 0
    ? ports.flatMap(({ circuit }) => rowsOf(circuit, conditions))
    : rowsOf(model, conditions)
}

function rowsOf(model: CircuitModel, conditions: Conditions): RingingRow[] {
  const portsByHz = new Map<number, Terminals>()
  return generatorsOf(model).flatMap((generator) => {
    const terminals = portsByHz.get(generator.hz) ?? terminalsOf(model, conditions, generator.hz)
    portsByHz.set(generator.hz, terminals)
    const voltsAt = ringVoltsFrom(terminals, generator, conditions)
    return model.sets.flatMap(({ node, set }) =>
      !set.ringer || (generator.ownRinger && node === generator.node)
        ? []
        : [
            {
              from: model.stations[generator.node]!,
              to: model.stations[node]!,
              volts: voltsAt(node),
              minVolts: set.ringer.minVolts,
            },
          ],
    )
  })
}
