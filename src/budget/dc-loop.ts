import type { CircuitModel, Port } from './circuit-model'
import type { Conditions } from './conditions'
import { type Ports, portsOf } from './ports'
import { onHookSiemens } from './ringer'
import type { LoopRow } from './rows'
import { solveReal } from './solve-real'

const LEAST_OHM = 1e-6

/** Something laid across the network at one port: a conductance, and a current fed in. */
interface Load {
  readonly port: number
  readonly siemens: number
  readonly amps: number
}

/** Volts at the ports of the loads, in their order: v = Z (I − ΔY v), solved for at most three places. */
function voltsAt(ports: Ports, loads: readonly Load[]): number[] {
  const places = [...new Set(loads.map(({ port }) => port))]
  const siemens = places.map((place) => sum(loads, place, 'siemens'))
  const amps = places.map((place) => sum(loads, place, 'amps'))
  const z = (a: number, b: number) => ports.re[places[a]! * ports.count + places[b]!]!
  const matrix = places.map((_, row) =>
    places.map((_, column) => (row === column ? 1 : 0) + z(row, column) * siemens[column]!),
  )
  const right = places.map((_, row) => amps.reduce((total, amp, column) => total + z(row, column) * amp, 0))
  const volts = solveReal(matrix, right)
  return loads.map(({ port }) => volts[places.indexOf(port)]!)
}

const sum = (loads: readonly Load[], place: number, key: 'siemens' | 'amps'): number =>
  loads.reduce((total, load) => (load.port === place ? total + load[key] : total), 0)

/** The DC source of a supply: volts that are left after its indicator, behind all its resistance. */
function sourceOf(model: CircuitModel, conditions: Conditions) {
  const { supply, node } = model.supply!
  const drop = supply.indicator?.forwardVolts ?? 0
  return {
    node,
    volts: Math.max(0, supply.volts * conditions.batteryFactor - drop),
    ohms: Math.max(LEAST_OHM, supply.ohms + (supply.indicator?.ohms ?? 0)),
    maxAmps: supply.maxMA === undefined ? Number.POSITIVE_INFINITY : supply.maxMA / 1000,
  }
}

/** A set off hook: its conductance to the battery, less what its bell laid there on hook. */
const offHookLoad = (model: CircuitModel, ports: Ports, index: number): Load => {
  const { node, set } = model.sets[index]!
  const siemens = 1 / Math.max(LEAST_OHM, set.offHook.dcOhms)
  return { port: ports.portOfNode[node]!, siemens: siemens - onHookSiemens(set, 0).re, amps: 0 }
}

/**
 * Milliamperes through each of the given sets, off hook together on a supply that bridges the pair.
 *
 * @param sets indices of the sets off hook; all others are on hook
 */
export function feedCurrentsMA(
  model: CircuitModel,
  conditions: Conditions,
  ports: Ports,
  sets: readonly number[],
): number[] {
  const source = sourceOf(model, conditions)
  const port = ports.portOfNode[source.node]!
  const offHook = sets.map((index) => offHookLoad(model, ports, index))
  const siemens = 1 / source.ohms
  let volts = voltsAt(ports, [{ port, siemens, amps: source.volts * siemens }, ...offHook])
  const delivered = (source.volts - volts[0]!) * siemens
  if (delivered > source.maxAmps)
    volts = voltsAt(ports, [{ port, siemens: 0, amps: source.maxAmps }, ...offHook])
  return sets.map(
    (index, k) => (volts[k + 1]! / Math.max(LEAST_OHM, model.sets[index]!.set.offHook.dcOhms)) * 1000,
  )
}

/** Milliamperes through the set with the battery in one of its legs, and through the one it calls. */
function seriesCurrentsMA(
  model: CircuitModel,
  conditions: Conditions,
  ports: Ports,
  own: number,
  other: number,
): [number, number] {
  const source = sourceOf(model, conditions)
  const { node, set } = model.sets[own]!
  const port = ports.portOfNode[node]!
  const siemens = 1 / (source.ohms + set.offHook.dcOhms)
  const bell = -onHookSiemens(set, 0).re
  const far = offHookLoad(model, ports, other)
  const volts = voltsAt(ports, [{ port, siemens: siemens + bell, amps: source.volts * siemens }, far])
  const delivered = (source.volts - volts[0]!) * siemens
  const limited = delivered > source.maxAmps
  const farVolts = limited
    ? voltsAt(ports, [{ port, siemens: bell, amps: source.maxAmps }, far])[1]!
    : volts[1]!
  const farOhms = Math.max(LEAST_OHM, model.sets[other]!.set.offHook.dcOhms)
  return [(limited ? source.maxAmps : delivered) * 1000, (farVolts / farOhms) * 1000]
}

const loopRow = (model: CircuitModel, call: readonly [number, number], which: 0 | 1, mA: number): LoopRow => {
  const name = (index: number) => model.stations[model.sets[index]!.node]!
  return {
    call: [name(call[0]), name(call[1])],
    station: name(call[which]),
    mA,
    minMA: model.sets[call[which]]!.set.offHook.minMA,
  }
}

/** Loop currents of every call on a circuit with a feed bridged across it, or with a battery in one leg of a set. */
export function loopRows(model: CircuitModel, conditions: Conditions): LoopRow[] {
  if (!model.supply) return []
  const ports = portsOf(model, conditions, 0)
  const series = model.supply.supply.kind === 'series'
  const rows: LoopRow[] = []
  for (let i = 0; i < model.sets.length; i++) {
    for (let j = i + 1; j < model.sets.length; j++) {
      const call = [i, j] as const
      let currents: readonly number[]
      if (series) {
        const own = call.find((index) => model.sets[index]!.node === model.supply!.node)
        if (own === undefined) continue
        const [near, far] = seriesCurrentsMA(model, conditions, ports, own, own === i ? j : i)
        currents = own === i ? [near, far] : [far, near]
      } else {
        currents = feedCurrentsMA(model, conditions, ports, call)
      }
      rows.push(loopRow(model, call, 0, currents[0]!), loopRow(model, call, 1, currents[1]!))
    }
  }
  return rows
}

/**
 * Loop currents through a ringdown unit: each port has a copy of the source, and direct current never passes between ports.
 */
export function ringdownLoopRows(
  model: CircuitModel,
  ports: readonly Port[],
  conditions: Conditions,
): LoopRow[] {
  const impedances = ports.map(({ circuit }) => portsOf(circuit, conditions, 0))
  const place = new Map<number, { port: number; index: number }>()
  for (const [port, { setIndices }] of ports.entries()) {
    for (const [index, set] of setIndices.entries()) place.set(set, { port, index })
  }
  const currents = (port: number, indices: readonly number[]) =>
    feedCurrentsMA(ports[port]!.circuit, conditions, impedances[port]!, indices)
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
