import { BUILT_IN } from '../catalog/built-in'
import type { CatalogEntries } from '../catalog/catalog'
import { ENTRY_SCHEMAS } from '../catalog/entry-schemas'
import type { Supply } from '../catalog/supply'
import type { TelephoneSet } from '../catalog/telephone-set'
import type { Wire } from '../catalog/wire'
import { bad, ok, type Result } from '../problem'
import { faultsOf } from '../schema/faults'
import { asFileHolds } from './as-file-holds'
import { type Circuit, circuitName, lineName, type Plan } from './plan'

type Kind = keyof CatalogEntries

/** Puts a wire of the plan's own in the catalog, where it hides a built-in one of its id. */
export const putWire = (plan: Plan, wire: Wire): Result<Plan> => putEntry(plan, 'wires', wire)

export const putSet = (plan: Plan, set: TelephoneSet): Result<Plan> => putEntry(plan, 'sets', set)

export const putSupply = (plan: Plan, supply: Supply): Result<Plan> => putEntry(plan, 'supplies', supply)

function putEntry(plan: Plan, kind: Kind, entry: { readonly id: string }): Result<Plan> {
  const faults = faultsOf(ENTRY_SCHEMAS[kind], entry, '')
  if (faults.length > 0) return bad(...faults)
  const entries: readonly { readonly id: string }[] = plan.catalog[kind]
  const index = entries.findIndex((each) => each.id === entry.id)
  const kept = asFileHolds(entry)
  if (JSON.stringify(entries[index]) === JSON.stringify(kept)) return ok(plan)
  const next = index < 0 ? [...entries, kept] : entries.with(index, kept)
  return ok({ ...plan, catalog: { ...plan.catalog, [kind]: next } })
}

/** Removes a wire of the plan's own. Refused while it is in use and no built-in wire stands behind it. */
export const removeOwnWire = (plan: Plan, id: string): Result<Plan> =>
  removeEntry(plan, 'wires', id, [
    ...[...plan.lines.values()].filter((line) => line.wire === id).map((line) => lineName(plan, line)),
    ...(plan.stock.some((each) => each.wire === id) ? ['the stock'] : []),
  ])

export const removeOwnSet = (plan: Plan, id: string): Result<Plan> =>
  removeEntry(
    plan,
    'sets',
    id,
    circuitNames(plan, (circuit) => [...circuit.sets.values()].includes(id)),
  )

export const removeOwnSupply = (plan: Plan, id: string): Result<Plan> =>
  removeEntry(
    plan,
    'supplies',
    id,
    circuitNames(plan, (circuit) => circuit.supply?.type === id),
  )

const circuitNames = (plan: Plan, uses: (circuit: Circuit) => boolean) =>
  [...plan.circuits.values()].filter(uses).map((circuit) => circuitName(plan, circuit))

function removeEntry(plan: Plan, kind: Kind, id: string, users: readonly string[]): Result<Plan> {
  const entries: readonly { readonly id: string; readonly name: string }[] = plan.catalog[kind]
  const entry = entries.find((each) => each.id === id)
  if (!entry) return ok(plan)
  if (users.length > 0 && !BUILT_IN[kind].some((each) => each.id === id)) {
    const message = `${entry.name} is in use (${users.slice(0, 3).join(', ')}${users.length > 3 ? ' …' : ''}): put something else there first.`
    return bad({ code: 'in-use', at: id, message })
  }
  const next = entries.filter((each) => each !== entry)
  return ok({ ...plan, catalog: { ...plan.catalog, [kind]: next } })
}
