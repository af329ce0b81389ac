import { BUILT_IN } from '../catalog/built-in'
import { smallestBoard } from '../catalog/smallest-board'
import type { CircuitModel } from './circuit-model'
import type { Lack, Remark } from './circuit-notes'
import { isAtSupply, type Port, supplyPorts } from './supply-ports'

/** Lines that take a port: the operator's own set takes none of a board, and a trunk of another board takes one. */
export function portsTaken({ supply, trunks }: CircuitModel, ports: readonly Port[]): number {
  const own = supply?.supply.kind === 'board' ? ports.filter((port) => !isAtSupply(port)) : ports
  return own.length + (trunks?.to.length ?? 0)
}

/** What a board or an exchange lacks for the telephones that are on it. */
export function switchboardLacks(model: CircuitModel): Lack[] {
  const { sets, supply: placed, stations } = model
  if (placed?.supply.kind !== 'board' && placed?.supply.kind !== 'exchange') return []
  const { supply, node } = placed
  const { id, kind, name } = supply
  const lacks: Lack[] = []
  const ports = supplyPorts(model)
  const lines = portsTaken(model, ports)
  if (supply.ports !== undefined && lines > supply.ports)
    lacks.push({
      code: 'too-few-ports',
      supply: id,
      lines,
      ports: supply.ports,
      wouldDo: smallestBoard(BUILT_IN.supplies, kind, lines)?.id ?? null,
    })
  if (kind === 'exchange') {
    for (const { circuit } of ports) {
      if (circuit.sets.length < 2) continue
      lacks.push({ code: 'on-one-port', stations: circuit.sets.map((set) => circuit.stations[set.node]!) })
    }
    return lacks
  }
  for (const set of sets)
    if (set.set.talk === 'common')
      lacks.push({ code: 'no-current', station: stations[set.node]!, supply: name })
  for (const part of ['drop', 'generator'] as const)
    if (!supply[part]) lacks.push({ code: 'board-without', supply: name, part })
  const mute = sets.filter((set) => set.node !== node && !set.set.generator)
  if (mute.length > 0) {
    const names = mute.map((set) => stations[set.node]!)
    lacks.push({ code: 'cannot-call-board', stations: names, board: stations[node]! })
  }
  return lacks
}

/** What a phantom or a simplex saves, and what its coils cost the circuits that it rides on. */
export function coilNotes({ coils, over, lines }: CircuitModel): Remark[] {
  if (!coils) return []
  if (!over) return [{ code: 'has-coils', ...coils }]
  const wireM = lines.reduce((sum, line) => sum + line.wireM, 0)
  const kg = lines.reduce((sum, { wire, wireM: m }) => sum + (wire.kgPerKm * m) / 1000, 0)
  return [{ code: 'rides-and-saves', over, wireM, kg }]
}
