import type { CircuitModel } from './circuit-model'
import { abs, add, type Complex, complex, divide, multiply, ONE, subtract } from './complex'
import type { Conditions } from './conditions'
import { type Ports, portsOf } from './ports'
import { onHookSiemens } from './ringer'
import type { RingingRow } from './rows'

/** A source with less resistance than this is taken to have it, so that its current stays finite. */
const LEAST_SOURCE_OHM = 1e-6

/**
 * Ring volts: for each hand generator, and for a supply that rings, the rms volts across every other ringer, all bells bridged.
 *
 * A generator's own ringer is disconnected while it turns. From a supply every bell rings, one at the supply's own station too.
 */
export function ringingRows(model: CircuitModel, conditions: Conditions): RingingRow[] {
  const rows: RingingRow[] = []
  const portsByHz = new Map<number, Ports>()
  const portsAtHz = (hz: number): Ports => {
    const ports = portsByHz.get(hz) ?? portsOf(model, conditions, hz)
    portsByHz.set(hz, ports)
    return ports
  }

  const ring = (
    from: number,
    source: { volts: number; hz: number; ohms: number },
    ownRinger: Complex | null,
  ): void => {
    const ports = portsAtHz(source.hz)
    const ohms = Math.max(source.ohms, LEAST_SOURCE_OHM)
    const a = ports.portOfNode[from]!
    const own: Complex = { re: ports.re[a * ports.count + a]!, im: ports.im[a * ports.count + a]! }
    const load = ownRinger ? subtract(complex(1 / ohms), ownRinger) : complex(1 / ohms)
    const shortCircuit = (source.volts * conditions.ringFactor) / ohms
    // v_b = Z_ba · I / (1 + Z_aa · ΔY): the current that is left for the network after the source's own admittance.
    const current = divide(complex(shortCircuit), add(ONE, multiply(own, load)))
    for (const { node, set } of model.sets) {
      if (!set.ringer || (ownRinger && node === from)) continue
      const b = ports.portOfNode[node]!
      const transfer: Complex = { re: ports.re[a * ports.count + b]!, im: ports.im[a * ports.count + b]! }
      rows.push({
        from: model.stations[from]!,
        to: model.stations[node]!,
        volts: abs(current) * abs(transfer),
        minVolts: set.ringer.minVolts,
      })
    }
  }

  for (const { node, set } of model.sets) {
    if (set.generator) ring(node, set.generator, onHookSiemens(set, set.generator.hz))
  }
  const supply = model.supply
  if (supply?.supply.ring && supply.supply.kind !== 'series') ring(supply.node, supply.supply.ring, null)
  return rows
}
