import { rodsOhms } from '../budget/earth-electrode'
import { isSwitchboard } from '../budget/trunk-ends'
import { BUILT_IN } from '../catalog/built-in'
import { mergeCatalogs } from '../catalog/catalog'
import { CELLS } from '../catalog/cells'
import type { Supply } from '../catalog/supply'
import { putSupply } from '../plan/catalog-edits'
import { moveSupply, setSet, setSupply } from '../plan/circuit-edits'
import { connectedPieces } from '../plan/circuit-topology'
import type { CircuitId, LineId, StationId } from '../plan/id'
import { setReturn, setWire } from '../plan/line-edits'
import type { Circuit, Plan } from '../plan/plan'
import { withCircuit, withLine } from '../plan/with-feature'

/** One thing that a crew can change on a circuit: plain data, so that a worker can find it and the page apply it. */
export type Change =
  | { readonly kind: 'wire'; readonly line: LineId; readonly wire: string }
  | { readonly kind: 'second-pair'; readonly line: LineId }
  | { readonly kind: 'pair-for-earth'; readonly line: LineId }
  | { readonly kind: 'more-rods'; readonly line: LineId; readonly rods: number }
  | { readonly kind: 'move-supply'; readonly at: StationId }
  | { readonly kind: 'supply'; readonly type: string; readonly at: StationId }
  | { readonly kind: 'board'; readonly type: string; readonly at: StationId }
  | { readonly kind: 'more-cells'; readonly cells: number }
  | { readonly kind: 'sets'; readonly from: string; readonly to: string }
  | { readonly kind: 'split'; readonly at: StationId }

/** What one more rod is to one: the published factor for several rods in a row, from any rod and soil. */
const rodsRatio = (rods: number): number => {
  const rod = { lengthM: 1.5, diameterM: 0.016 }
  return rodsOhms(rod, 100, rods) / rodsOhms(rod, 100, 1)
}

/** Volts of one cell of a battery; of a battery that doesn't name its cell, those of a dry cell. */
export const cellVolts = (supply: Supply): number => CELLS.find(({ id }) => id === supply.cell)?.volts ?? 1.5

/** Volts of one cell of the supply that a circuit has; undefined where it has none. */
export function supplyCellVolts(plan: Plan, circuit: Circuit): number | undefined {
  const supply = circuit.supply && mergeCatalogs(BUILT_IN, plan.catalog).supplies.get(circuit.supply.type)
  return supply ? cellVolts(supply) : undefined
}

const freeId = <T extends string>(taken: (id: T) => boolean, wanted: string): T => {
  for (let k = 2; ; k++) {
    const id = `${wanted}-${k}` as T
    if (!taken(id)) return id
  }
}

/** Makes one change to a circuit. A change that no longer fits the plan leaves it as it is. */
export function applyChange(plan: Plan, circuitId: CircuitId, change: Change): Plan {
  const circuit = plan.circuits.get(circuitId)
  if (!circuit) return plan
  switch (change.kind) {
    case 'wire':
      return setWire(plan, change.line, change.wire)
    case 'second-pair':
      return layBeside(plan, circuit, change.line)
    case 'pair-for-earth': {
      const result = setReturn(plan, change.line, 'pair')
      return result.ok ? result.value : plan
    }
    case 'more-rods': {
      const line = plan.lines.get(change.line)
      if (!line?.electrodeOhms) return plan
      const ratio = rodsRatio(change.rods)
      const [from, to] = line.electrodeOhms
      const result = setReturn(plan, line.id, 'earth', [from * ratio, to * ratio])
      return result.ok ? result.value : plan
    }
    case 'move-supply':
      return moveSupply(plan, circuitId, change.at)
    case 'supply':
    case 'board':
      return setSupply(plan, circuitId, { type: change.type, at: change.at })
    case 'more-cells':
      return addCells(plan, circuit, change.cells)
    case 'sets':
      return replaceSets(plan, circuit, change.from, change.to)
    case 'split':
      return splitAt(plan, circuit, change.at)
  }
}

export const applyChanges = (plan: Plan, circuit: CircuitId, changes: readonly Change[]): Plan =>
  changes.reduce((next, change) => applyChange(next, circuit, change), plan)

/** A second run of the same wire along the same way, joined to the first at both ends. */
function layBeside(plan: Plan, circuit: Circuit, id: LineId): Plan {
  const line = plan.lines.get(id)
  if (!line) return plan
  const { unknown: _, ...own } = line
  const second = freeId<LineId>((taken) => plan.lines.has(taken) || plan.stations.has(taken as never), id)
  const laid = withLine(plan, { ...own, id: second, pairs: 1 })
  return withCircuit(laid, { ...circuit, lines: [...circuit.lines, second] })
}

function addCells(plan: Plan, circuit: Circuit, cells: number): Plan {
  const supply = circuit.supply && mergeCatalogs(BUILT_IN, plan.catalog).supplies.get(circuit.supply.type)
  if (!supply || !circuit.supply) return plan
  const ratio = (supply.volts + cells * cellVolts(supply)) / supply.volts
  const { sources: _, ...own } = supply
  const stronger: Supply = {
    ...own,
    id: `${supply.id}-plus-${cells}`,
    name: `${supply.name}, and ${cells} × ${cellVolts(supply)} V`,
    volts: supply.volts * ratio,
    ohms: supply.ohms * ratio,
    ...(supply.endVolts !== undefined && { endVolts: supply.endVolts * ratio }),
    source: `derived: ${supply.name} with ${cells} more of its cells in series`,
  }
  const result = putSupply(plan, stronger)
  return result.ok ? setSupply(result.value, circuit.id, { ...circuit.supply, type: stronger.id }) : plan
}

/** Other sets in place of some. A supply that no set is left to need goes away with them. */
function replaceSets(plan: Plan, circuit: Circuit, from: string, to: string): Plan {
  const replaced = [...circuit.sets].reduce(
    (next, [station, type]) => (type === from ? setSet(next, circuit.id, station, to) : next),
    plan,
  )
  const { supplies } = mergeCatalogs(BUILT_IN, plan.catalog)
  const joinsLines = isSwitchboard(supplies.get(circuit.supply?.type ?? ''))
  return joinsLines || needsSupply(replaced, replaced.circuits.get(circuit.id)!)
    ? replaced
    : setSupply(replaced, circuit.id, null)
}

function needsSupply(plan: Plan, circuit: Circuit): boolean {
  const { sets } = mergeCatalogs(BUILT_IN, plan.catalog)
  return [...circuit.sets.values()].some((type) => {
    const set = sets.get(type)
    return set?.talk === 'common' || !set?.generator
  })
}

/** Cuts a circuit at a station into one circuit for each side; the station gets a set on each, to pass calls on by word. */
function splitAt(plan: Plan, circuit: Circuit, at: StationId): Plan {
  const pieces = connectedPieces(circuit.lines, (id) => {
    const line = plan.lines.get(id)
    return (
      line && {
        from: line.from === at ? sideOf(at, id) : line.from,
        to: line.to === at ? sideOf(at, id) : line.to,
      }
    )
  })
  const relay = circuit.sets.get(at) ?? commonest([...circuit.sets.values()])
  if (pieces.length < 2 || relay === undefined) return plan
  let next = plan
  for (const [k, lines] of pieces.entries()) {
    const reached = new Set(lines.flatMap((id) => [plan.lines.get(id)!.from, plan.lines.get(id)!.to]))
    const sets = new Map([...circuit.sets].filter(([station]) => reached.has(station))).set(at, relay)
    const id = k === 0 ? circuit.id : freeId<CircuitId>((taken) => next.circuits.has(taken), circuit.id)
    const supply =
      circuit.supply && (reached.has(circuit.supply.at) ? circuit.supply : { ...circuit.supply, at })
    next = withCircuit(next, {
      ...circuit,
      id,
      name: k === 0 ? circuit.name : `${circuit.name} ${k + 1}`,
      lines,
      sets,
      supply,
    })
  }
  return next
}

const sideOf = (at: StationId, line: LineId) => `${at}\n${line}` as StationId

const commonest = (types: readonly string[]): string | undefined => {
  const counts = new Map<string, number>()
  for (const type of types) counts.set(type, (counts.get(type) ?? 0) + 1)
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0]
}
