import type { CircuitModel } from './circuit-model'
import type { Conditions } from './conditions'
import type { Ports } from './ports'
import { onHookSiemens } from './ringer'
import { solveReal } from './solve-real'

/** A source or a set with less resistance than this is taken to have it, so that its current stays finite. */
const LEAST_OHM = 1e-6

/** Something laid across the network at one port: a conductance, and a current fed in. */
interface Load {
  readonly port: number
  readonly siemens: number
  readonly amps: number
}

/** What the battery does while some sets are off hook. */
export interface DcCall {
  /** Current through each of those sets, mA, in their order. */
  readonly mA: readonly number[]
  /** What the source delivers in all, A. */
  readonly amps: number
  /** Volts across the pair at a node that the ports show. */
  readonly voltsAt: (node: number) => number
}

/**
 * Direct current with the given sets off hook and all others on hook.
 *
 * A feed or one side of a ringdown unit bridges the pair at its node. A series battery stands in one leg of the set at its node, which
 * must be among those off hook. A source that would deliver more than its limit delivers just that.
 *
 * @param sets indices of the sets off hook
 */
export function dcCall(
  model: CircuitModel,
  conditions: Conditions,
  ports: Ports,
  sets: readonly number[],
): DcCall {
  const { supply, node } = model.supply!
  const carrier =
    supply.kind === 'series' ? sets.find((index) => model.sets[index]!.node === node) : undefined
  const dcOhms = (index: number) => Math.max(LEAST_OHM, model.sets[index]!.set.offHook.dcOhms)

  const openVolts = Math.max(
    0,
    supply.volts * conditions.batteryFactor - (supply.indicator?.forwardVolts ?? 0),
  )
  const ownOhms = Math.max(LEAST_OHM, supply.ohms + (supply.indicator?.ohms ?? 0))
  const siemens = 1 / (ownOhms + (carrier === undefined ? 0 : dcOhms(carrier)))
  const maxAmps = supply.maxMA === undefined ? Number.POSITIVE_INFINITY : supply.maxMA / 1000
  const port = ports.portOfNode[node]!

  // Off hook a bell is taken off the pair, and the set laid across it, unless it stands in one leg with the battery.
  const lifted = sets.map((index): Load => {
    const set = model.sets[index]!
    const across = index === carrier ? 0 : 1 / dcOhms(index)
    return { port: ports.portOfNode[set.node]!, siemens: across - onHookSiemens(set.set, 0).re, amps: 0 }
  })
  let voltsAtPort = voltsUnder(ports, [{ port, siemens, amps: openVolts * siemens }, ...lifted])
  let amps = (openVolts - voltsAtPort(port)) * siemens
  if (amps > maxAmps) {
    amps = maxAmps
    voltsAtPort = voltsUnder(ports, [{ port, siemens: 0, amps }, ...lifted])
  }
  const voltsAt = (at: number) => voltsAtPort(ports.portOfNode[at]!)
  const mA = sets.map(
    (index) => 1000 * (index === carrier ? amps : voltsAt(model.sets[index]!.node) / dcOhms(index)),
  )
  return { mA, amps, voltsAt }
}

/** Volts at any port under some loads: v = Z (I − ΔY v), solved at the places of the loads, three at most in a call. */
function voltsUnder(ports: Ports, loads: readonly Load[]): (port: number) => number {
  const places = [...new Set(loads.map(({ port }) => port))]
  const total = (place: number, key: 'siemens' | 'amps') =>
    loads.reduce((sum, load) => (load.port === place ? sum + load[key] : sum), 0)
  const siemens = places.map((place) => total(place, 'siemens'))
  const amps = places.map((place) => total(place, 'amps'))
  const z = (a: number, b: number) => ports.column(a).re[b]!
  const sum = (row: number, each: readonly number[]) =>
    places.reduce((volts, place, k) => volts + z(row, place) * each[k]!, 0)

  const matrix = places.map((row, r) =>
    places.map((column, c) => (r === c ? 1 : 0) + z(row, column) * siemens[c]!),
  )
  const volts = solveReal(
    matrix,
    places.map((row) => sum(row, amps)),
  )
  const net = amps.map((amp, k) => amp - siemens[k]! * volts[k]!)
  return (port) => (places.includes(port) ? volts[places.indexOf(port)]! : sum(port, net))
}
