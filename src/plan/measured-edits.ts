import { BUILT_IN } from '../catalog/built-in'
import { freeId } from '../catalog/free-id'
import type { Supply } from '../catalog/supply'
import type { TelephoneSet } from '../catalog/telephone-set'
import type { Wire } from '../catalog/wire'
import { ok, type Result } from '../problem'
import { putSet, putSupply, putWire } from './catalog-edits'
import { setSet, setSupply } from './circuit-edits'
import type { CircuitId, LineId, StationId } from './id'
import { setWire } from './line-edits'
import type { Plan } from './plan'

/** An entry of which a figure was measured, still under the id that it had, and who has the thing that was measured: all that have this entry, or one. */
export type Measured =
  | { readonly kind: 'wire'; readonly entry: Wire; readonly of: 'all' | LineId }
  | {
      readonly kind: 'set'
      readonly entry: TelephoneSet
      readonly of: 'all' | { readonly circuit: CircuitId; readonly station: StationId }
    }
  | { readonly kind: 'supply'; readonly entry: Supply; readonly of: 'all' | CircuitId }

/**
 * Takes a measured entry into the plan's own. For all that have it, it hides the printed one. For one of them it becomes an entry of its
 * own, which this one then has; where that one alone had it already, it is changed in its place.
 */
export function takeMeasured(plan: Plan, measured: Measured): Result<Plan> {
  switch (measured.kind) {
    case 'wire': {
      const { entry, of } = measured
      if (of === 'all' || isOwnOfOne(plan.catalog.wires, entry.id, usersOfWire(plan, entry.id)))
        return putWire(plan, entry)
      const own = ownEntry(entry, [...BUILT_IN.wires, ...plan.catalog.wires])
      return after(putWire(plan, own), (next) => setWire(next, of, own.id))
    }
    case 'set': {
      const { entry, of } = measured
      if (of === 'all' || isOwnOfOne(plan.catalog.sets, entry.id, usersOfSet(plan, entry.id)))
        return putSet(plan, entry)
      const own = ownEntry(entry, [...BUILT_IN.sets, ...plan.catalog.sets])
      return after(putSet(plan, own), (next) => setSet(next, of.circuit, of.station, own.id))
    }
    case 'supply': {
      const { entry, of } = measured
      const supply = of !== 'all' && plan.circuits.get(of)?.supply
      if (!supply || isOwnOfOne(plan.catalog.supplies, entry.id, usersOfSupply(plan, entry.id)))
        return putSupply(plan, entry)
      const own = ownEntry(entry, [...BUILT_IN.supplies, ...plan.catalog.supplies])
      return after(putSupply(plan, own), (next) =>
        setSupply(next, of as CircuitId, { type: own.id, at: supply.at }),
      )
    }
  }
}

const after = (result: Result<Plan>, edit: (plan: Plan) => Plan): Result<Plan> =>
  result.ok ? ok(edit(result.value)) : result

interface Named {
  readonly id: string
  readonly name: string
}

const MEASURED = ', measured'

const ownEntry = <T extends Named>(entry: T, known: readonly Named[]): T => ({
  ...entry,
  id: freeId(entry.id, known),
  name: entry.name.endsWith(MEASURED) ? entry.name : `${entry.name}${MEASURED}`,
})

/** Whether an entry is the plan's own, hides no built-in one, and has one user only. */
const isOwnOfOne = (own: readonly Named[], id: string, users: number): boolean =>
  users <= 1 && own.some((entry) => entry.id === id) && !isBuiltIn(id)

const isBuiltIn = (id: string): boolean =>
  [...BUILT_IN.wires, ...BUILT_IN.sets, ...BUILT_IN.supplies].some((entry) => entry.id === id)

const usersOfWire = (plan: Plan, id: string): number =>
  [...plan.lines.values()].filter(({ wire }) => wire === id).length +
  plan.stock.filter(({ wire }) => wire === id).length

const usersOfSet = (plan: Plan, id: string): number =>
  [...plan.circuits.values()].flatMap(({ sets }) => [...sets.values()]).filter((set) => set === id).length

const usersOfSupply = (plan: Plan, id: string): number =>
  [...plan.circuits.values()].filter(({ supply }) => supply?.type === id).length
