import type { Catalog, CatalogEntries } from '../catalog/catalog'
import { valueAt, withFigure } from '../catalog/entry-value'
import type { Sources, Spread } from '../catalog/sources'
import { isolated } from '../isolated'
import { bad, ok, type Problem, type Result } from '../problem'
import type { MeasuredFigures, Stores } from './shelf'

/** A meter in a field bag: 95 of 100 readings lie within so many per cent. Allowance. */
const METER_PCT = 3

interface Entry {
  readonly id: string
  readonly name: string
  readonly sources?: Sources
  readonly spread?: Spread
}

/**
 * What there is with each thing that was measured as an entry of its own, in which what was read stands in the place of the printed
 * figure; and these entries. Cells and rods keep what was read of them: they are no entries.
 */
export function asMeasured(
  have: Stores,
  catalog: Catalog,
): Result<{ readonly have: Stores; readonly own: CatalogEntries }> {
  const faults: Problem[] = []
  const own = { wires: new Map(), sets: new Map(), supplies: new Map() }
  const entryOf = (kind: keyof typeof own, id: string, measured: MeasuredFigures | undefined, at: string) => {
    const figures = Object.entries(measured ?? {})
    const printed = catalog[kind].get(id) as Entry
    if (figures.length === 0) return id
    const key = `${id} ${JSON.stringify(figures.toSorted())}`
    const known = own[kind].get(key)
    if (known) return known.id
    for (const [name] of figures)
      if (valueAt(printed, name) === undefined) {
        const message = `${isolated(printed.name)} has no such figure: leave it out.`
        faults.push({ code: 'contradiction', at: `${at}.measured.${name}`, message })
      }
    let free = `${id}-measured`
    for (let k = 2; catalog[kind].has(free) || [...own[kind].values()].some((each) => each.id === free); k++)
      free = `${id}-measured-${k}`
    const made = figures.reduce<Entry>(
      (entry, [name, value]) => withFigure(entry, { at: name, value, meterPct: METER_PCT }),
      { ...printed, id: free, name: `${printed.name}, measured` },
    )
    own[kind].set(key, made)
    return free
  }
  const counted = (kind: 'sets' | 'supplies') =>
    have[kind].map(({ id, count, measured }, k) => ({
      id: entryOf(kind, id, measured, `have.${kind}[${k}]`),
      count,
    }))
  const things: Stores = {
    ...have,
    wires: have.wires.map(({ measured, ...each }, k) => ({
      ...each,
      wire: entryOf('wires', each.wire, measured, `have.wires[${k}]`),
    })),
    sets: counted('sets'),
    supplies: counted('supplies'),
  }
  if (faults.length > 0) return bad(...faults)
  const lists = Object.fromEntries(Object.entries(own).map(([kind, of]) => [kind, [...of.values()]]))
  return ok({ have: things, own: lists as unknown as CatalogEntries })
}
