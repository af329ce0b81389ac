import type { CatalogEntries } from '../catalog/catalog'
import type { Problem } from '../problem'
import { valueWords } from '../schema/limit'
import type { KnownIds } from '../schema/plain-values'
import { isObject, type Members, MOST_FAULTS } from '../schema/schema'

const KINDS = ['station', 'line', 'hazard'] as const
export type FeatureKind = (typeof KINDS)[number]

/** The kind of a feature that this program knows, or undefined for one that is kept untouched. */
export function kindOf(feature: unknown): FeatureKind | undefined {
  const properties = isObject(feature) ? feature.properties : undefined
  const kind = isObject(properties) ? properties.kind : undefined
  return KINDS.find((each) => each === kind)
}

const idsIn = (list: unknown): readonly unknown[] =>
  Array.isArray(list) ? list.filter(isObject).map((each) => each.id) : []

/**
 * What a reference in the file may name. Things that are faulty themselves count too: a fault is told once, at its own place, and not
 * again at every reference. With no list of features nobody knows which there are.
 */
export function knownIds(
  features: readonly unknown[] | undefined,
  plan: Members,
  builtIn: CatalogEntries,
): KnownIds<'station' | 'line' | 'wire' | 'set' | 'supply' | 'record'> {
  const own = isObject(plan.catalog) ? plan.catalog : {}
  const of = (kind: FeatureKind) =>
    features && new Set(idsIn(features.filter((feature) => kindOf(feature) === kind)))
  const entries = (name: keyof CatalogEntries) => new Set([...idsIn(builtIn[name]), ...idsIn(own[name])])
  return {
    station: of('station'),
    line: of('line'),
    wire: entries('wires'),
    set: entries('sets'),
    supply: entries('supplies'),
    record: new Set(idsIn(plan.field)),
  }
}

/** Faults of things in a list that have the id of one before them. */
export function repeatedIds(list: readonly unknown[], at: string, faults: Problem[]): void {
  const first = new Map<unknown, number>()
  list.forEach((each, index) => {
    if (faults.length > MOST_FAULTS) return
    const id = isObject(each) ? each.id : undefined
    if (typeof id !== 'string' && typeof id !== 'number') return
    const taken = first.get(id)
    if (taken === undefined) first.set(id, index)
    else {
      const message = `The id ${valueWords(id)} is that of ${at}[${taken}] already: give each an id of its own.`
      faults.push({ code: 'repeated-id', at: `${at}[${index}].id`, message })
    }
  })
}
