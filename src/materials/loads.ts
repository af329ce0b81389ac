import { CELL_MASSES } from '../catalog/built-in'
import type { Catalog } from '../catalog/catalog'
import { GEAR_KINDS, type GearKind } from '../catalog/line-gear'
import type { Supply } from '../catalog/supply'
import { remembering } from '../memo'
import type { Plan } from '../plan/plan'
import { fullSpoolKg } from './carried-spools'
import { type LineGear, totalGear } from './line-gear'
import { DEFAULT_LOADS, type LoadAllowances } from './load-allowances'
import { countsByLength } from './spool-kinds'
import type { WireSpools } from './spool-plan'

export const LOAD_KINDS = ['wire', 'reel', 'set', 'battery', 'gear', 'tools'] as const
export type LoadKind = (typeof LOAD_KINDS)[number]

/** What a row of the load list is: entries of the catalog by id. */
export type LoadThing =
  | { readonly kind: 'spool'; readonly wire: string; readonly lengthM: number }
  | { readonly kind: 'set'; readonly set: string }
  | { readonly kind: 'supply'; readonly supply: string }
  /** `cell`: its kind, where the set says which. */
  | { readonly kind: 'cell'; readonly cell: string | null }
  | { readonly kind: GearKind }
  | { readonly kind: 'tools' }
  | { readonly kind: 'test-set' }

/** One row of the load list: so many things of one mass. A spool is one thing; its wire and its reel are weighed apart. */
export interface LoadItem {
  readonly thing: LoadThing
  readonly count: number
  /** How many of them are spare. */
  readonly spare: number
  readonly eachKg: number
  readonly kg: Readonly<Partial<Record<LoadKind, number>>>
}

export interface Loads {
  /** What one person carries at most, kg, and how many carry. */
  readonly perPersonKg: number
  readonly people: number
  readonly items: readonly LoadItem[]
  readonly kgByKind: Readonly<Record<LoadKind, number>>
  readonly totalKg: number
  /** Full loads of one person that all of it makes, and how often the crew must go. */
  readonly personLoads: number
  readonly trips: number
  /** What one person may not carry alone, with how many it takes. */
  readonly shared: readonly { readonly thing: LoadThing; readonly eachKg: number; readonly people: number }[]
}

const item = (thing: LoadThing, count: number, each: LoadItem['kg'], spare = 0): LoadItem => ({
  thing,
  count,
  spare,
  eachKg: LOAD_KINDS.reduce((sum, kind) => sum + (each[kind] ?? 0), 0),
  kg: Object.fromEntries(Object.entries(each).map(([kind, kg]) => [kind, kg * count])),
})

/** Loads of one person: things in the first load that still takes them, the heaviest first; what is too heavy goes to several. */
function personLoads(items: readonly LoadItem[], limitKg: number): number {
  const restKg: number[] = []
  let full = 0
  for (const { count, eachKg } of items.toSorted((one, other) => other.eachKg - one.eachKg)) {
    if (eachKg > limitKg) {
      full += count * Math.ceil(eachKg / limitKg)
      continue
    }
    // A load that did not take one of these things does not take the next.
    let at = 0
    for (let thing = 0; thing < count; thing++) {
      while (at < restKg.length && restKg[at]! < eachKg) at++
      if (at === restKg.length) restKg.push(limitKg)
      restKg[at]! -= eachKg
    }
  }
  return full + restKg.length
}

/** What a set's own battery is made of, and how many: as the set says, or as the plan allows for a set that does not. */
export function cellsOfSet(
  set: string,
  catalog: Catalog,
  { cellsPerSet }: Pick<LoadAllowances, 'cellsPerSet'>,
): { readonly cell: string | null; readonly count: number } {
  const entry = catalog.sets.get(set)
  if (entry?.talk !== 'local') return { cell: null, count: 0 }
  const { cell, cells } = entry.battery ?? {}
  return cell && cells ? { cell, count: cells } : { cell: null, count: cellsPerSet }
}

function cellsInUse(
  sets: ReadonlyMap<string, number>,
  catalog: Catalog,
  allowances: LoadAllowances,
): ReadonlyMap<string | null, number> {
  const inUse = new Map<string | null, number>()
  for (const [id, howMany] of sets) {
    const { cell, count: each } = cellsOfSet(id, catalog, allowances)
    if (each > 0) addTo(inUse, cell, each * howMany)
  }
  return inUse
}

function addTo<K>(counts: Map<K, number>, what: K, more = 1): void {
  counts.set(what, (counts.get(what) ?? 0) + more)
}

/** What a supply runs on: the battery behind it, or its own; undefined where it has none. */
const batteryOf = (supply: Supply): { readonly volts: number; readonly cell?: string } | undefined =>
  supply.fedBy ?? (supply.ampHours === undefined ? undefined : supply)

/** Cells in a battery; undefined where it does not name a known one. */
function cellsIn({ volts, cell: id }: { readonly volts: number; readonly cell?: string }) {
  const cell = CELL_MASSES.find((each) => each.id === id)
  return cell && { cell: cell.id, count: Math.max(1, Math.round(volts / cell.volts)) }
}

/** How many of each kind of set and of supply there are. */
const equipmentOf = remembering((circuits: Plan['circuits']) => {
  const sets = new Map<string, number>()
  const supplies = new Map<string, number>()
  for (const circuit of circuits.values()) {
    for (const id of circuit.sets.values()) addTo(sets, id)
    if (circuit.supply) addTo(supplies, circuit.supply.type)
  }
  return { sets, supplies }
})

const NONE: readonly LineGear[] = []

/**
 * What is carried, by mass in kg: the wire and its reels, the sets, the batteries with their spares, what the lines take besides, and the tools; how many loads
 * of one person it makes, and how many trips of the crew. The mass of a supply has the cells in use, so that only its spare cells are carried besides; a
 * supply without a battery takes no spare.
 *
 * Range: things are packed into loads by first fit, which is at most about a quarter above the fewest loads there could be.
 */
export function loadsOf(
  plan: Plan,
  catalog: Catalog,
  spools: readonly WireSpools[],
  allowances: LoadAllowances = DEFAULT_LOADS,
  gear: readonly LineGear[] = NONE,
): Loads {
  const items: LoadItem[] = []
  for (const { wire, carry, used } of spools) {
    const entry = catalog.wires.get(wire)
    const usedOf = countsByLength(used)
    for (const { lengthM, count } of carry) {
      const wireKg = (lengthM / 1000) * (entry?.kgPerKm ?? 0)
      const reelKg = fullSpoolKg(wire, lengthM, entry?.kgPerKm ?? 0, allowances.reelPct) - wireKg
      const inUse = usedOf.get(lengthM) ?? 0
      items.push(
        item(
          { kind: 'spool', wire, lengthM },
          count,
          { wire: wireKg, reel: reelKg },
          Math.max(0, count - inUse),
        ),
      )
    }
  }
  const { sets, supplies } = equipmentOf(plan.circuits)
  for (const [id, inUse] of sets)
    items.push(item({ kind: 'set', set: id }, inUse, { set: catalog.sets.get(id)?.kg ?? allowances.setKg }))
  const spare = allowances.spareBatteriesPct / 100
  const spareCells = new Map<string | null, number>()
  for (const [type, inUse] of supplies) {
    const supply = catalog.supplies.get(type)
    const battery = supply && batteryOf(supply)
    const cells = battery && cellsIn(battery)
    if (cells) addTo(spareCells, cells.cell, inUse * cells.count * spare)
    // Of a battery whose cells nobody names the unit itself is the only mass there is.
    const units = battery && !cells ? Math.ceil(inUse * spare) : 0
    const each = { battery: supply?.kg ?? allowances.supplyKg }
    items.push(item({ kind: 'supply', supply: type }, inUse + units, each, units))
  }
  const setCells = cellsInUse(sets, catalog, allowances)
  for (const cell of new Set([...setCells.keys(), ...spareCells.keys()])) {
    const inUse = setCells.get(cell) ?? 0
    const count = Math.ceil(inUse * (1 + spare) + (spareCells.get(cell) ?? 0))
    const battery = CELL_MASSES.find(({ id }) => id === cell)?.kg ?? allowances.cellKg
    if (count > 0) items.push(item({ kind: 'cell', cell }, count, { battery }, count - inUse))
  }
  const total = totalGear(gear)
  for (const kind of GEAR_KINDS)
    if (total[kind] > 0) items.push(item({ kind }, total[kind], { gear: allowances.gearKg[kind] }))
  if (plan.lines.size > 0) {
    const testSetKg = Math.min(allowances.testSetKg, allowances.toolsKg)
    items.push(
      item({ kind: 'tools' }, allowances.crews, { tools: allowances.toolsKg - testSetKg }),
      item({ kind: 'test-set' }, allowances.crews, { tools: testSetKg }),
    )
  }

  const kgOf = (kind: LoadKind) => items.reduce((sum, { kg }) => sum + (kg[kind] ?? 0), 0)
  const kgByKind = {
    wire: kgOf('wire'),
    reel: kgOf('reel'),
    set: kgOf('set'),
    battery: kgOf('battery'),
    gear: kgOf('gear'),
    tools: kgOf('tools'),
  }
  const loads = personLoads(items, allowances.perPersonKg)
  return {
    perPersonKg: allowances.perPersonKg,
    people: allowances.people,
    items,
    kgByKind,
    totalKg: items.reduce((sum, { count, eachKg }) => sum + count * eachKg, 0),
    personLoads: loads,
    trips: Math.ceil(loads / allowances.people),
    shared: items
      .filter(({ eachKg }) => eachKg > allowances.perPersonKg)
      .map(({ thing, eachKg }) => ({ thing, eachKg, people: Math.ceil(eachKg / allowances.perPersonKg) })),
  }
}
