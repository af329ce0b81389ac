import { memoryOfEach } from '../memo'
import { type CircuitModel, type Port, portsAt } from './circuit-model'
import type { Conditions } from './conditions'
import { loopRows, ringdownLoopRows } from './dc-loop'
import { ringingRows } from './ringing'
import type { CircuitRows, VoiceRow } from './rows'
import { voiceRows } from './voice-loss'

const remembered = memoryOfEach<CircuitModel, readonly Port[]>()

/** The ports of a circuit with a ringdown unit; none for every other circuit. */
export function ringdownPorts(model: CircuitModel): readonly Port[] {
  const { supply } = model
  if (supply?.supply.kind !== 'ringdown') return []
  return remembered(model, [], () => portsAt(model, supply.node))
}

/** Loop, ringing and voice figures of a circuit under the given conditions. */
export function circuitRows(model: CircuitModel, conditions: Conditions): CircuitRows {
  const ports = ringdownPorts(model)
  const voice = voiceRowsAtHz(model, conditions)
  if (ports.length === 0) {
    return { loop: loopRows(model, conditions), ringing: ringingRows(model, conditions), voice }
  }
  return {
    loop: ringdownLoopRows(model, ports, conditions),
    ringing: ports.flatMap(({ circuit }) => ringingRows(circuit, conditions)),
    voice,
  }
}

/** Insertion loss between each two sets at one frequency, dB, with the loss through a ringdown unit between its sides. */
export function voiceRowsAtHz(model: CircuitModel, conditions: Conditions, hz?: number): VoiceRow[] {
  const ports = ringdownPorts(model)
  if (ports.length === 0) return voiceRows(model, conditions, undefined, hz)
  const portOfSet = new Map<number, number>()
  for (const [port, { setIndices }] of ports.entries()) for (const set of setIndices) portOfSet.set(set, port)
  const throughUnitDb = model.supply?.supply.insertionDb ?? 0
  const extraDb = (a: number, b: number) => (portOfSet.get(a) === portOfSet.get(b) ? 0 : throughUnitDb)
  return voiceRows(model, conditions, extraDb, hz)
}
