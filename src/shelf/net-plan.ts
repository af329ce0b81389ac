import { isolated } from '../isolated'
import { planSpools } from '../materials/plan-spools'
import { measurePlan } from '../measure/measure-line'
import type { CircuitId, LineId, StationId } from '../plan/id'
import { type Circuit, EMPTY_PLAN, type Line, type Plan, type Station } from '../plan/plan'
import type { Ground } from '../terrain/ground'
import type { Country } from './country'
import { type CircuitDesign, type NetDesign, runsOf } from './net-design'
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
  /** Draws the lines of a circuit, and gives their ids. */
  const draw = (circuit: CircuitDesign): readonly LineId[] =>
    circuit.edges.flatMap((each) =>
      runsOf(country, each).flatMap((run) => {
        let from = shelf.places[each.edge[0]]!.id as StationId
        const to = shelf.places[each.edge[1]]!.id as StationId
        return run.map(({ kind, way }, k) => {
          const end = k === run.length - 1 ? to : joint(way.to)
          const id = free<LineId>('l')
          lines.set(id, {
            id,
            from,
            to: end,
            wire: country.wires[kind]!.wire.id,
            pairs: 1,
            return: 'pair',
            bends: way.bends,
            legs: legsOf(way.lays),
          })
          from = end
          return id
        })
      }),
    )
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
  const plan: Plan = {
    ...EMPTY_PLAN,
    title: shelf.title || shelf.places.map(({ name }) => isolated(name)).join(', '),
    note: country.isMadeUp ? MADE_UP_NOTE : '',
    catalog: { ...shelf.own, supplies: [...shelf.own.supplies, ...batteries] },
    stock: shelf.have.wires.filter(({ count }) => count > 0),
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
