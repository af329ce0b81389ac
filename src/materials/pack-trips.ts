import type { Catalog } from '../catalog/catalog'
import type { LineId, StationId } from '../plan/id'
import type { Plan } from '../plan/plan'
import type { LineGear } from './line-gear'
import type { LoadAllowances } from './load-allowances'
import { cellsOfSet, type Loads, type LoadThing } from './loads'
import type { Piece } from './spool-plan'

/** So many things of one kind that a crew takes on one trip. */
export interface TripRow {
  /** From 0. */
  readonly crew: number
  /** From 0. */
  readonly trip: number
  readonly thing: LoadThing
  readonly count: number
  readonly eachKg: number
  /** Spools by name, where they are used; and the lines that they are for. */
  readonly spools: readonly string[]
  readonly lines: readonly LineId[]
  readonly isSpare: boolean
}

/** What one crew carries, and how often it goes. */
export interface CrewLoad {
  readonly crew: number
  readonly lines: readonly LineId[]
  readonly kg: number
  readonly personLoads: number
  readonly trips: number
}

/** What is packed: the loads of the report, the pieces of its lines, and what each line takes besides. */
export interface Packed {
  readonly loads: Loads
  readonly pieces: ReadonlyMap<LineId, readonly Piece[]>
  readonly used: readonly { readonly wire: string; readonly spool: string; readonly lengthM: number }[]
  readonly gear: ReadonlyMap<LineId, LineGear>
}

/** One thing before it lies in anybody's load. */
interface Unit {
  readonly thing: LoadThing
  readonly eachKg: number
  readonly spool: string | null
  readonly lines: readonly LineId[]
  readonly isSpare: boolean
}

/**
 * Everything that is carried, shared out to the crews by the lines that they lay, and packed into loads of one person and trips of a crew:
 * the heaviest first, each in the first load that takes it; what is too heavy for one takes several people on one trip. Spools go with the crew
 * that uses them first, telephones and supplies with the crew that first reaches their station, spares with whom they are spares for.
 *
 * Every thing of the loads is in just one row. The first trip has the tools.
 *
 * @param crews the lines of each crew, in the order in which it lays them
 */
export function packTrips(
  plan: Plan,
  catalog: Catalog,
  packed: Packed,
  crews: readonly (readonly LineId[])[],
  allowances: LoadAllowances,
): { readonly rows: readonly TripRow[]; readonly crews: readonly CrewLoad[] } {
  const units = shareOut(plan, catalog, packed, crews, allowances)
  const perTrip = Math.max(1, Math.round(allowances.people / Math.max(1, crews.length)))
  const packs = units.map((own) => packLoads(own, allowances.perPersonKg, perTrip))
  return {
    rows: packs.flatMap((trips, crew) =>
      trips.flatMap((trip, i) =>
        rowsOf(trip.flatMap(({ units: all }) => all)).map((row) => ({ ...row, crew, trip: i })),
      ),
    ),
    crews: packs.map((trips, crew) => ({
      crew,
      lines: crews[crew] ?? [],
      kg: units[crew]!.reduce((sum, { eachKg }) => sum + eachKg, 0),
      personLoads: trips.flat().reduce((sum, { people }) => sum + people, 0),
      trips: trips.length,
    })),
  }
}

/** The things of each crew, one by one. */
function shareOut(
  plan: Plan,
  catalog: Catalog,
  { loads, pieces, used, gear }: Packed,
  crews: readonly (readonly LineId[])[],
  allowances: LoadAllowances,
): readonly (readonly Unit[])[] {
  const crewOf = new Map<LineId, number>(
    crews.flatMap((lines, crew) => lines.map((line) => [line, crew] as const)),
  )
  const reachedBy = new Map<StationId, number>()
  for (const [id, { from, to }] of plan.lines)
    for (const station of [from, to]) if (!reachedBy.has(station)) reachedBy.set(station, crewOf.get(id) ?? 0)
  const at = (station: StationId) => reachedBy.get(station) ?? 0
  const linesOf = new Map<string, LineId[]>()
  for (const [line, own] of pieces)
    for (const spool of new Set(own.map((piece) => piece.spool)))
      linesOf.set(spool, [...(linesOf.get(spool) ?? []), line])

  const units: Unit[][] = Array.from({ length: Math.max(1, crews.length) }, () => [])
  const put = (crew: number, unit: Unit, count = 1) => {
    for (let i = 0; i < count; i++) units[crew]!.push(unit)
  }
  const circuits = [...plan.circuits.values()]
  /** Where each of those in use goes. */
  const placesOf = (thing: LoadThing): readonly number[] => {
    switch (thing.kind) {
      case 'spool':
        return []
      case 'set':
        return circuits.flatMap(({ sets }) =>
          [...sets].flatMap(([station, set]) => (set === thing.set ? [at(station)] : [])),
        )
      case 'supply':
        return circuits.flatMap(({ supply }) =>
          supply?.type === thing.supply ? [at(supply.at as StationId)] : [],
        )
      case 'cell':
        return circuits.flatMap(({ sets }) =>
          [...sets].flatMap(([station, set]) => {
            const { cell, count } = cellsOfSet(set, catalog, allowances)
            return cell === thing.cell ? new Array<number>(count).fill(at(station)) : []
          }),
        )
      case 'tools':
      case 'test-set':
        return units.map((_, crew) => crew)
      default:
        return [...gear].flatMap(([line, own]) =>
          new Array<number>(own[thing.kind]).fill(crewOf.get(line) ?? 0),
        )
    }
  }
  for (const { thing, count, eachKg } of loads.items) {
    const unit: Unit = { thing, eachKg, spool: null, lines: [], isSpare: false }
    let placed = 0
    if (thing.kind === 'spool') {
      for (const { spool } of used.filter(
        ({ wire, lengthM }) => wire === thing.wire && lengthM === thing.lengthM,
      )) {
        const lines = linesOf.get(spool) ?? []
        put(crewOf.get(lines[0]!) ?? 0, { ...unit, spool, lines })
        placed += 1
      }
    }
    const places = placesOf(thing).slice(0, count - placed)
    for (const crew of places) put(crew, unit)
    placed += places.length
    // Spares go where those in use went, turn by turn.
    const turns = places.length > 0 ? places : units.map((_, crew) => crew)
    for (let i = 0; placed < count; i++, placed++) put(turns[i % turns.length]!, { ...unit, isSpare: true })
  }
  return units
}

interface Load {
  readonly people: number
  readonly units: readonly Unit[]
}

const isTool = ({ thing }: Unit) => thing.kind === 'tools' || thing.kind === 'test-set'

/** Loads of one person, or of several who carry one thing, dealt out to trips of so many people. */
function packLoads(units: readonly Unit[], limitKg: number, perTrip: number): readonly (readonly Load[])[] {
  const shared: Load[] = []
  const single: { freeKg: number; units: Unit[] }[] = []
  for (const unit of units.toSorted((a, b) => b.eachKg - a.eachKg)) {
    if (unit.eachKg > limitKg) {
      shared.push({ people: Math.ceil(unit.eachKg / limitKg), units: [unit] })
      continue
    }
    const load = single.find(({ freeKg }) => freeKg >= unit.eachKg)
    if (load) {
      load.units.push(unit)
      load.freeKg -= unit.eachKg
    } else single.push({ freeKg: limitKg - unit.eachKg, units: [unit] })
  }
  const loads = [...single.map((load): Load => ({ people: 1, units: load.units })), ...shared]
  const first = loads.filter((load) => load.units.some(isTool))
  const rest = loads.filter((load) => !first.includes(load))
  const trips: { people: number; loads: Load[] }[] = []
  for (const load of [...first, ...rest.toSorted((a, b) => b.people - a.people)]) {
    // What takes more people than a crew has goes on a trip of its own, with help.
    const trip = trips.find(({ people }) => people + load.people <= perTrip)
    if (trip) {
      trip.people += load.people
      trip.loads.push(load)
    } else trips.push({ people: load.people, loads: [load] })
  }
  return trips.map((trip) => trip.loads)
}

/** Like things together. */
function rowsOf(units: readonly Unit[]): readonly Omit<TripRow, 'crew' | 'trip'>[] {
  const rows = new Map<string, Omit<TripRow, 'crew' | 'trip'>>()
  for (const { thing, eachKg, spool, lines, isSpare } of units) {
    const key = JSON.stringify([thing, isSpare])
    const before = rows.get(key)
    rows.set(key, {
      thing,
      eachKg,
      isSpare,
      count: (before?.count ?? 0) + 1,
      spools: [...(before?.spools ?? []), ...(spool === null ? [] : [spool])],
      lines: [...new Set([...(before?.lines ?? []), ...lines])],
    })
  }
  return [...rows.values()]
}
