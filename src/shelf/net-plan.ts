import { isolated } from '../isolated'
import { planSpools } from '../materials/plan-spools'
import { measurePlan } from '../measure/measure-line'
import type { CircuitId, LineId, StationId } from '../plan/id'
import { type Circuit, EMPTY_PLAN, type Line, type Plan, type Station } from '../plan/plan'
import type { Ground } from '../terrain/ground'
import type { Country } from './country'
import { type CircuitDesign, type NetDesign, runOf, takenBy } from './net-design'
import { strandsOf } from './runs'
import { legsOf } from './ways'

const MADE_UP_NOTE = 'The positions are made up: only the lengths of the lines count.'

/**
 * The plan of a net: its stock is what lies on the shelf. The reserve that a plan usually carries is left out where the shelf has none to
 * give: what is carried is then what is laid.
 */
export function netPlan(country: Country, design: NetDesign, ground?: Ground): Plan {
  const { shelf } = country
  const stations = new Map<StationId, Station>(
    shelf.places.map(({ id, name }, p) => {
      const station = { id: id as StationId, name, note: '', position: country.positions[p]! }
      return [station.id, station]
    }),
  )
  const lines = new Map<LineId, Line>()
  const free = <T extends string>(stem: string): T => {
    for (let k = 1; ; k++) {
      const id = `${stem}${k}` as T
      if (!stations.has(id as never) && !lines.has(id as never)) return id
    }
  }
  const joint = (position: Station['position']): StationId => {
    const id = free<StationId>('joint')
    stations.set(id, { id, name: `Joint ${id.slice('joint'.length)}`, note: '', position })
    return id
  }
  const opens = new Map<number, StationId>()
  const stationAt = (place: number): StationId => {
    const { id } = shelf.places[place] ?? {}
    if (id !== undefined) return id as StationId
    const open = opens.get(place) ?? joint(country.positionOf(place))
    opens.set(place, open)
    return open
  }
  /** Draws the lines of a circuit, and gives their ids. */
  const draw = (circuit: CircuitDesign): readonly LineId[] =>
    circuit.edges.flatMap((each) => {
      const run = runOf(country, each)
      let from = stationAt(each.edge[0])
      const to = stationAt(each.edge[1])
      return run.flatMap((part, k) => {
        const end = k === run.length - 1 ? to : joint(part.way.to)
        const begin = from
        from = end
        return strandsOf(part).map(({ kind, way, rod }) => {
          const id = free<LineId>('l')
          const ohms = rod === undefined ? undefined : country.rods[rod]!.ohms
          lines.set(id, {
            id,
            from: begin,
            to: end,
            wire: country.wires[kind]!.wire.id,
            pairs: 1,
            return: ohms === undefined ? 'pair' : 'earth',
            ...(ohms !== undefined && { electrodeOhms: [ohms, ohms] as const }),
            bends: way.bends,
            legs: legsOf(way.lays),
          })
          return id
        })
      })
    })
  const circuits = new Map(
    design.map((each, k): [CircuitId, Circuit] => {
      const id = `c${k + 1}` as CircuitId
      const names = [...each.sets.keys()].map((p) => shelf.places[p]!.name)
      return [
        id,
        {
          id,
          name: design.length === 1 && names.length > 2 ? 'Net' : names.join(' – '),
          lines: draw(each),
          sets: new Map(
            [...each.sets].map(([p, set]) => [shelf.places[p]!.id as StationId, country.sets[set]!.set.id]),
          ),
          supply: each.supply && {
            type: country.supplies[each.supply.kind]!.supply.id,
            at: shelf.places[each.supply.at]!.id as StationId,
          },
        },
      ]
    }),
  )
  const batteries = [...new Set(design.flatMap(({ supply }) => (supply ? [supply.kind] : [])))].flatMap(
    (kind) => (country.supplies[kind]!.cells ? [country.supplies[kind]!.supply] : []),
  )
  const used = takenBy(country, design).wireM
  // Each wire stands in the stock as it is used; what is not used, as a pair.
  const wires = country.wires
    .filter(({ pool }, k) => {
      const ways = country.wires.flatMap((each, i) => (each.pool === pool ? [i] : []))
      return k === (ways.find((i) => used[i]!.length > 0) ?? ways[0])
    })
    .map(({ wire }) => wire)
  const plan: Plan = {
    ...EMPTY_PLAN,
    title: shelf.title || shelf.places.map(({ name }) => isolated(name)).join(', '),
    note: country.isMadeUp ? MADE_UP_NOTE : '',
    weather: shelf.weather,
    wireTempC: shelf.wireTempC,
    catalog: {
      ...shelf.own,
      wires: [...shelf.own.wires, ...wires.filter(({ id }) => !shelf.catalog.wires.has(id))],
      supplies: [...shelf.own.supplies, ...batteries],
    },
    stock: country.wires.flatMap(({ wire, spools }) =>
      wires.includes(wire) ? spools.map((each) => ({ wire: wire.id, ...each })) : [],
    ),
    stations,
    lines,
    circuits,
  }
  return withReserve(plan, country, ground)
}

function withReserve(plan: Plan, { shelf }: Country, ground?: Ground): Plan {
  const { spools } = planSpools(plan, shelf.catalog, measurePlan(plan, ground))
  if (spools.every(({ missingM }) => missingM === 0)) return plan
  return { ...plan, allowances: { ...plan.allowances, reservePct: 0 } }
}

/** A plan of a shelf's places and entries, without a line: what they are called. */
export const barePlan = (country: Country): Plan => netPlan(country, [])
