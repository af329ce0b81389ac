import type { Catalog } from '../catalog/catalog'
import { oneWireOf, pairsAsOne } from '../catalog/pairs-as-one'
import type { Wire } from '../catalog/wire'
import { longestChainM, type SpoolKind, usableKinds } from '../materials/spool-kinds'
import { DEFAULT_ALLOWANCES } from '../plan/plan'
import type { Length, Shelf } from './shelf'

/** All that there is of one wire, used one way. */
export interface WireKind {
  readonly wire: Wire
  /** Id of the wire as the shelf has it. */
  readonly of: string
  /** As a pair, or one conductor of it with the earth for the other. */
  readonly by: 'pair' | 'earth'
  readonly spools: readonly SpoolKind[]
  /** The longest run that all of it can be spliced into, m. */
  readonly reachM: number
  /** Kinds of one pool are the same wire used in other ways: a net uses it in one of them. */
  readonly pool: number
}

/** More pairs of a cable than this are not laid together as one. */
const MOST_ABREAST = 4

/** Every way to use each wire: as a pair, with several of its pairs as one, and where there are earth rods one conductor of it. */
export function wireKinds({ have, catalog }: Shelf): readonly WireKind[] {
  const byWire = new Map<string, Length[]>()
  for (const each of have.wires)
    if (each.count > 0) byWire.set(each.wire, [...(byWire.get(each.wire) ?? []), each])
  const hasRods = have.rods.some(({ count }) => count > 0)
  return [...byWire].flatMap(([id, lengths], pool) => {
    const wire = catalog.wires.get(id)!
    const kind = (used: Wire, by: WireKind['by'], spools: readonly SpoolKind[]): WireKind => ({
      wire: used,
      of: id,
      by,
      spools: usableKinds(spools, 0),
      reachM: longestChainM(spools, DEFAULT_ALLOWANCES.spliceWasteM),
      pool,
    })
    const most = Math.min(MOST_ABREAST, Math.max(...lengths.map(pairsOf)))
    return [
      kind(wire, 'pair', lengths.map(asPairs)),
      ...Array.from({ length: most - 1 }, (_, k) => k + 2).map((pairs) =>
        kind(
          named(catalog, pairsAsOne(wire, pairs)),
          'pair',
          lengths.filter((each) => pairsOf(each) >= pairs),
        ),
      ),
      ...(hasRods ? [kind(named(catalog, oneWireOf(wire)), 'earth', lengths.flatMap(asSingles))] : []),
    ].filter(({ reachM }) => reachM > 0)
  })
}

const pairsOf = ({ pairs = 1, isSingle }: Length): number => (isSingle ? 1 : pairs)

/** Two single wires side by side are a pair. */
const asPairs = ({ lengthM, count, isSingle }: Length): SpoolKind => ({
  lengthM,
  count: isSingle ? Math.floor(count / 2) : count,
})

/** A pair taken apart is two single wires; a cable is not taken apart. */
const asSingles = ({ lengthM, count, isSingle, pairs = 1 }: Length): readonly SpoolKind[] =>
  isSingle ? [{ lengthM, count }] : pairs === 1 ? [{ lengthM, count: 2 * count }] : []

/** Under an id that nothing bears yet. */
function named({ wires }: Catalog, wire: Wire): Wire {
  let { id } = wire
  while (wires.has(id)) id += '-'
  return { ...wire, id }
}
