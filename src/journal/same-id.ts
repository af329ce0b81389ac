import { recordsOf } from '../plan/field-records'
import { freeId } from '../plan/free-id'
import type { CircuitId, HazardId, LineId, StationId } from '../plan/id'
import type { Circuit, Hazard, Line, Plan, Station } from '../plan/plan'
import { canonical, isSame } from './canonical'
import { recordsOfOneId, withRecordId } from './same-record-id'

type Things = ReadonlyMap<string, { readonly id: string }>
const KINDS = ['stations', 'lines', 'hazards', 'circuits'] as const
type Kind = (typeof KINDS)[number]

/** Whether two things of one id, made apart, are plainly one thing that both hands know, and not two by chance. */
const ALIKE: { readonly [K in Kind]: (a: never, b: never) => boolean } = {
  stations: (a: Station, b: Station) => a.name === b.name || isSame(a.position, b.position),
  lines: (a: Line, b: Line) => isSame([a.from, a.to].toSorted(), [b.from, b.to].toSorted()),
  hazards: (a: Hazard, b: Hazard) =>
    a.hazard === b.hazard && (a.name === b.name || isSame(a.geometry, b.geometry)),
  circuits: (a: Circuit, b: Circuit) => a.name === b.name || a.lines.some((id) => b.lines.includes(id)),
}

/** Every id that a plan's features and circuits have. */
function idsOf(plan: Plan): Set<string> {
  const foreign = (plan.unknown?.features ?? []).map((feature) => String((feature as { id?: unknown }).id))
  return new Set([...KINDS.flatMap((kind) => [...(plan[kind] as Things).keys()]), ...foreign])
}

const kindOfId = (plan: Plan, id: string): Kind | undefined =>
  KINDS.find((kind) => (plan[kind] as Things).has(id))

/**
 * Gives one of two things an id of its own where both hands made a thing under the same id since they parted, and the two are
 * not one: the one with the greater canonical text changes, whichever hand's it is.
 */
export function tellApart(
  base: Plan,
  mine: Plan,
  theirs: Plan,
): { readonly mine: Plan; readonly theirs: Plan } {
  const taken = new Set([...idsOf(base), ...idsOf(mine), ...idsOf(theirs)])
  const plans = { mine, theirs }
  const known = idsOf(base)
  // Stations before the lines that name them, lines before the circuits.
  for (const kind of KINDS) {
    for (const id of [...(plans.mine[kind] as Things).keys()].sort()) {
      const other = kindOfId(plans.theirs, id)
      if (known.has(id) || !other) continue
      const [own, foreign] = [(plans.mine[kind] as Things).get(id), (plans.theirs[other] as Things).get(id)]
      if (other === kind && (isSame(own, foreign) || ALIKE[kind](own as never, foreign as never))) continue
      const fresh = freeId(id, taken)
      const hand = canonical([kind, own]) > canonical([other, foreign]) ? 'mine' : 'theirs'
      plans[hand] = withId(plans[hand], id, fresh)
    }
  }
  for (const id of recordsOfOneId(base, plans.mine, plans.theirs)) {
    const textIn = (plan: Plan) => canonical(recordsOf(plan).find((record) => record.id === id))
    const hand = textIn(plans.mine) > textIn(plans.theirs) ? 'mine' : 'theirs'
    const ids = [base, plans.mine, plans.theirs].flatMap((plan) => recordsOf(plan).map((each) => each.id))
    plans[hand] = withRecordId(plans[hand], id, freeId(id, new Set(ids)))
  }
  return plans
}

/** The plan with one thing under another id, at every place that names it. */
function withId(plan: Plan, id: string, fresh: string): Plan {
  const of = <Id extends string>(each: Id): Id => (each === id ? (fresh as Id) : each)
  const keyed = <Id extends string, T extends { readonly id: Id }>(
    items: ReadonlyMap<Id, T>,
    change: (item: T) => T = (item) => item,
  ) => new Map([...items].map(([key, item]) => [of(key), change({ ...item, id: of(item.id) })]))
  return {
    ...plan,
    stations: keyed<StationId, Station>(plan.stations),
    lines: keyed<LineId, Line>(plan.lines, (line) => ({ ...line, from: of(line.from), to: of(line.to) })),
    hazards: keyed<HazardId, Hazard>(plan.hazards),
    ...(plan.field && { field: plan.field.map((record) => ({ ...record, line: of(record.line) })) }),
    circuits: keyed<CircuitId, Circuit>(plan.circuits, (circuit) => ({
      ...circuit,
      lines: circuit.lines.map(of),
      sets: new Map([...circuit.sets].map(([station, set]) => [of(station), set])),
      supply: circuit.supply && { ...circuit.supply, at: of(circuit.supply.at) },
      ...(circuit.electrodeOhms && {
        electrodeOhms: Object.fromEntries(
          Object.entries(circuit.electrodeOhms).map(([station, ohms]) => [of(station), ohms]),
        ),
      }),
    })),
  }
}
