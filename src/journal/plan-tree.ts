import type { CircuitId, HazardId, LineId, StationId } from '../plan/id'
import type { Circuit, Hazard, Line, Plan, Station } from '../plan/plan'
import { canonical } from './canonical'
import { plainOf, Register, type Tree } from './registers'

/** A value as a tree: objects by their members, all else whole. */
function treeOf(value: unknown): Tree | Register {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return new Register(value)
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, each]) => each !== undefined)
      .map(([name, each]) => [name, treeOf(each)]),
  )
}

const membersOf = (value: object): Tree => treeOf(value) as Tree

const byKey = <T>(
  items: Iterable<T>,
  keyOf: (item: T) => string,
  toTree: (item: T) => Tree | Register,
): Tree => Object.fromEntries([...items].map((item) => [keyOf(item), toTree(item)]))

/** Like things told apart by how many of them came before. */
const byCount = <T>(
  items: readonly T[],
  keyOf: (item: T) => string,
  toTree: (item: T) => Tree | Register,
): Tree => {
  const seen = new Map<string, number>()
  return byKey(
    items,
    (item) => {
      const key = keyOf(item)
      const count = (seen.get(key) ?? 0) + 1
      seen.set(key, count)
      return count === 1 ? key : `${key}#${count}`
    },
    toTree,
  )
}

/** A line: its bends with its legs are one register, and so is how it returns with its electrodes. */
function lineTree({ bends, legs, endElevationsM, return: way, electrodeOhms, ...others }: Line): Tree {
  return {
    ...membersOf(others),
    route: new Register({ bends, legs, ...(endElevationsM && { endElevationsM }) }),
    way: new Register({ return: way, ...(electrodeOhms && { electrodeOhms }) }),
  }
}

/** A circuit: each of its lines and each of its sets is a register; its supply with its place is one. */
const circuitTree = ({ lines, sets, supply, ...others }: Circuit): Tree => ({
  ...membersOf(others),
  lines: byKey(lines, String, () => new Register(true)),
  sets: byKey(
    sets,
    ([station]) => station,
    ([, set]) => new Register(set),
  ),
  supply: new Register(supply),
})

const stationTree = ({ position, ...others }: Station): Tree => ({
  ...membersOf(others),
  position: new Register(position),
})

const hazardTree = ({ geometry, ...others }: Hazard): Tree => ({
  ...membersOf(others),
  geometry: new Register(geometry),
})

const ownId = (item: unknown): string => {
  const id = (item as { id?: unknown } | null)?.id
  return typeof id === 'string' || typeof id === 'number' ? String(id) : canonical(item)
}

/** The plan as registers, ready to be merged: but for what was recorded, which is no register but a list that only grows. */
export function planTree(plan: Plan): Tree {
  const { stations, lines, hazards, circuits, catalog, stock, unknown, field: _, ...settings } = plan
  const { features = [], ...others } = unknown ?? {}
  return {
    ...membersOf(settings),
    catalog: {
      wires: byKey(catalog.wires, ownId, membersOf),
      sets: byKey(catalog.sets, ownId, membersOf),
      supplies: byKey(catalog.supplies, ownId, membersOf),
    },
    stock: byCount(stock, ({ wire, lengthM }) => `${wire} ${lengthM}`, membersOf),
    stations: byKey(stations.values(), ({ id }) => id, stationTree),
    lines: byKey(lines.values(), ({ id }) => id, lineTree),
    hazards: byKey(hazards.values(), ({ id }) => id, hazardTree),
    circuits: byKey(circuits.values(), ({ id }) => id, circuitTree),
    unknown: { ...membersOf(others), features: byCount(features, ownId, (each) => new Register(each)) },
  }
}

type Plain = Readonly<Record<string, unknown>>

const values = (plain: unknown): Plain[] => Object.values((plain ?? {}) as Record<string, Plain>)
const byId = <Id extends string, T>(items: readonly T[]): ReadonlyMap<Id, T> =>
  new Map(items.map((item) => [(item as { id: Id }).id, item]))

/** The plan that registers tell of: the inverse of {@link planTree}. */
export function planFromTree(tree: Tree): Plan {
  const plain = plainOf(tree) as Plain
  const { catalog, stock, stations, lines, hazards, circuits, unknown, ...settings } = plain
  const { wires, sets, supplies } = catalog as Record<'wires' | 'sets' | 'supplies', unknown>
  const { features, ...others } = (unknown ?? {}) as Plain
  const foreign = Object.values((features ?? {}) as Plain)
  const kept = { ...others, ...(foreign.length > 0 && { features: foreign }) }
  return {
    ...(settings as unknown as Plan),
    catalog: {
      wires: values(wires),
      sets: values(sets),
      supplies: values(supplies),
    } as unknown as Plan['catalog'],
    stock: values(stock) as unknown as Plan['stock'],
    stations: byId<StationId, Station>(values(stations) as unknown as Station[]),
    lines: byId<LineId, Line>(
      values(lines).map(
        ({ route, way, ...line }) => ({ ...line, ...(route as Plain), ...(way as Plain) }) as unknown as Line,
      ),
    ),
    hazards: byId<HazardId, Hazard>(values(hazards) as unknown as Hazard[]),
    circuits: byId<CircuitId, Circuit>(
      values(circuits).map(
        (circuit) =>
          ({
            ...circuit,
            lines: Object.keys((circuit.lines ?? {}) as Plain),
            sets: new Map(Object.entries((circuit.sets ?? {}) as Plain)),
          }) as unknown as Circuit,
      ),
    ),
    ...(Object.keys(kept).length > 0 && { unknown: kept }),
  }
}
