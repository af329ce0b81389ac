import { isSwitchboard } from '../budget/trunk-ends'
import { BUILT_IN } from '../catalog/built-in'
import { type Catalog, mergeCatalogs } from '../catalog/catalog'
import { smallestBoard } from '../catalog/smallest-board'
import type { Wire } from '../catalog/wire'
import { circuitsOfLine } from '../plan/circuit-topology'
import type { CircuitId, LineId, StationId } from '../plan/id'
import { portsNeeded } from '../plan/lines-at-board'
import type { Circuit, Plan } from '../plan/plan'
import type { Change } from './remedy-changes'

/** How many more cells a battery is tried with. */
const MORE_CELLS = [1, 2, 3, 4]
/** How many rods are tried in place of one. */
const RODS = [2, 4]

/**
 * Every single change that a crew could make to some lines and at some stations of a circuit, and to its supply and sets, sound or not:
 * the engine tells which of them helps. Kinds take turns, so that the first so many hold some of each.
 */
export function possibleChanges(
  plan: Plan,
  id: CircuitId,
  where: { readonly lines: readonly LineId[]; readonly stations: readonly StationId[] },
): Change[] {
  const circuit = plan.circuits.get(id)!
  const catalog = mergeCatalogs(BUILT_IN, plan.catalog)
  const { stations } = where
  const changes: Change[] = []

  for (const lineId of where.lines) {
    const line = plan.lines.get(lineId)!
    const wire = catalog.wires.get(line.wire)!
    for (const other of catalog.wires.values()) {
      if (other.id !== wire.id && mayDoBetter(other, wire))
        changes.push({ kind: 'wire', line: lineId, wire: other.id })
    }
    if (!circuit.over) changes.push({ kind: 'second-pair', line: lineId })
    if (line.return === 'earth') {
      changes.push({ kind: 'pair-for-earth', line: lineId })
      for (const rods of RODS) changes.push({ kind: 'more-rods', line: lineId, rods })
    }
  }

  const supply = circuit.supply && catalog.supplies.get(circuit.supply.type)
  if (supply && circuit.supply) {
    for (const at of stations) if (at !== circuit.supply.at) changes.push({ kind: 'move-supply', at })
    if (supply.ampHours !== undefined)
      for (const cells of MORE_CELLS) changes.push({ kind: 'more-cells', cells })
  }
  for (const other of catalog.supplies.values()) {
    if (other.id === supply?.id || isSwitchboard(other)) continue
    // Where there is none yet, a supply may stand at any station.
    const places = circuit.supply ? [circuit.supply.at] : stations
    for (const at of places) changes.push({ kind: 'supply', type: other.id, at })
  }

  changes.push(...boardChanges(plan, circuit, catalog, stations))

  for (const from of new Set(circuit.sets.values())) {
    for (const other of catalog.sets.values())
      if (other.id !== from) changes.push({ kind: 'sets', from, to: other.id })
  }
  // A line that several circuits share would be split for all of them.
  const shared = circuit.lines.some((line) => circuitsOfLine(plan, line).length > 1)
  const isJoined = isSwitchboard(supply ?? undefined)
  if (!shared && !circuit.over && !isJoined) for (const at of stations) changes.push({ kind: 'split', at })
  return takingTurns(changes)
}

/**
 * A board in place of a party line, at each station where enough lines meet; or, where one stands already, the next that has room for its
 * lines. Of each size and make only the smallest with enough ports is tried.
 */
function boardChanges(
  plan: Plan,
  circuit: Circuit,
  catalog: Catalog,
  stations: readonly StationId[],
): Change[] {
  const own = circuit.supply && catalog.supplies.get(circuit.supply.type)
  const kinds =
    own && isSwitchboard(own) ? [own.kind] : circuit.supply ? [] : (['board', 'exchange'] as const)
  const places = circuit.supply
    ? [circuit.supply.at]
    : stations.filter((at) => portsNeeded(plan, circuit, at, 'board') > 1)
  return kinds.flatMap((kind) =>
    places.flatMap((at): Change[] => {
      const fitting = smallestBoard(catalog.supplies.values(), kind, portsNeeded(plan, circuit, at, kind))
      return fitting && fitting.id !== own?.id ? [{ kind: 'board', type: fitting.id, at }] : []
    }),
  )
}

/** The first of each kind, then the second of each, and so on. */
function takingTurns(changes: readonly Change[]): Change[] {
  const turns = new Map<Change['kind'], number>()
  const placed = changes.map((change) => {
    const turn = turns.get(change.kind) ?? 0
    turns.set(change.kind, turn + 1)
    return { change, turn }
  })
  return placed.sort((a, b) => a.turn - b.turn).map(({ change }) => change)
}

/** A wire that is no better in ohms, farads or leakage can mend nothing. */
export const mayDoBetter = (other: Wire, wire: Wire): boolean =>
  other.loopOhmPerKm < wire.loopOhmPerKm ||
  other.nanoFPerKm < wire.nanoFPerKm ||
  other.wetMicroSPerKm < wire.wetMicroSPerKm
