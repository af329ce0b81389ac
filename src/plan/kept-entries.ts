import { BUILT_IN } from '../catalog/built-in'
import type { CatalogEntries } from '../catalog/catalog'
import { freeId } from '../catalog/free-id'
import type { Plan } from './plan'

export type EntryKind = keyof CatalogEntries
type EntryOf<K extends EntryKind> = CatalogEntries[K][number]

export const NO_ENTRIES: CatalogEntries = { wires: [], sets: [], supplies: [] }

/** Whether two entries are the same but for their ids. */
const areAlike = (a: object, b: object): boolean =>
  JSON.stringify({ ...a, id: '' }) === JSON.stringify({ ...b, id: '' })

/** Whether an entry is among those kept for other plans, just as it is. */
export const isKept = <K extends EntryKind>(kept: CatalogEntries, kind: K, entry: EntryOf<K>): boolean =>
  kept[kind].some((each) => areAlike(each, entry))

/** The entries kept for other plans with one more: it takes the place of one of its name, and the id of none, nor of a built-in one. */
export function withKept<K extends EntryKind>(
  kept: CatalogEntries,
  kind: K,
  entry: EntryOf<K>,
): CatalogEntries {
  const list: readonly EntryOf<K>[] = kept[kind]
  const before = list.findIndex(({ name }) => name === entry.name)
  const others = list.filter((_, index) => index !== before)
  const taken = [...BUILT_IN[kind], ...others]
  const id = before < 0 ? entry.id : list[before]!.id
  const own = { ...entry, id: taken.some((each) => each.id === id) ? freeId(id, taken) : id }
  return { ...kept, [kind]: before < 0 ? [...list, own] : list.with(before, own) }
}

/** The same without one of them. */
export const withoutKept = (kept: CatalogEntries, kind: EntryKind, id: string): CatalogEntries => ({
  ...kept,
  [kind]: (kept[kind] as readonly { readonly id: string }[]).filter((each) => each.id !== id),
})

/** The kept entries of a kind that a plan lacks, under ids that nothing in it bears. */
export function offeredTo<K extends EntryKind>(
  plan: Plan,
  kept: CatalogEntries,
  kind: K,
): readonly EntryOf<K>[] {
  const own: readonly EntryOf<K>[] = plan.catalog[kind]
  const taken: EntryOf<K>[] = [...BUILT_IN[kind], ...own] as EntryOf<K>[]
  return (kept[kind] as readonly EntryOf<K>[]).flatMap((entry) => {
    if (own.some((each) => areAlike(each, entry))) return []
    const id = taken.some((each) => each.id === entry.id) ? freeId(entry.id, taken) : entry.id
    const offered = { ...entry, id }
    taken.push(offered)
    return [offered]
  })
}

/** The plan with the kept entry that bears an id, where it lacks it: a plan carries whatever it uses. */
export function takeKept(plan: Plan, kept: CatalogEntries, kind: EntryKind, id: string | null): Plan {
  const entry = offeredTo(plan, kept, kind).find((each) => each.id === id)
  return entry ? { ...plan, catalog: { ...plan.catalog, [kind]: [...plan.catalog[kind], entry] } } : plan
}
