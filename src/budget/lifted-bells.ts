import type { CircuitModel } from './circuit-model'
import type { Lack, Remark } from './circuit-notes'
import type { Conditions } from './conditions'
import { callsFrom } from './dc-call'
import { onHookSiemens } from './ringer'
import { supplyPorts } from './supply-ports'
import { terminalsOf } from './terminals'

/**
 * Bells without a capacitor that draw so much direct current on hook that the supply takes the line as answered: each by itself is
 * missing something; where only all of a line together draw so much, it is told.
 */
export function bellsTakenForLifted(
  model: CircuitModel,
  conditions: Conditions,
): { readonly missing: readonly Lack[]; readonly notes: readonly Remark[] } {
  const { supply } = model
  const offHookMA = supply?.supply.offHookMA
  if (!supply || offHookMA === undefined || supply.supply.kind === 'series') return { missing: [], notes: [] }
  const ports = supplyPorts(model)
  const missing: Lack[] = []
  const notes: Remark[] = []
  for (const circuit of ports.length > 0 ? ports.map((port) => port.circuit) : [model]) {
    const drawing = circuit.sets.map(({ set }) => onHookSiemens(set, 0).re)
    if (!drawing.some((siemens) => siemens > 0)) continue
    const { voltsAt, amps } = callsFrom(circuit, conditions, terminalsOf(circuit, conditions, 0))([])
    let looks = false
    for (const [k, { node }] of circuit.sets.entries()) {
      const mA = 1000 * drawing[k]! * voltsAt(node)
      if (drawing[k] === 0 || mA < offHookMA) continue
      looks = true
      missing.push({ code: 'bell-looks-lifted', station: circuit.stations[node]!, mA, offHookMA })
    }
    if (!looks && amps * 1000 >= offHookMA)
      notes.push({ code: 'bells-look-lifted', mA: amps * 1000, offHookMA })
  }
  return { missing, notes }
}
