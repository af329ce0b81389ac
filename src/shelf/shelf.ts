import type { Catalog, CatalogEntries } from '../catalog/catalog'
import type { Position } from '../geo/position'

/** A place that must have a telephone. */
export interface Place {
  readonly id: string
  readonly name: string
  /** Null where only distances are known. */
  readonly position: Position | null
}

/** So many of one thing. */
export interface Counted {
  readonly id: string
  readonly count: number
}

/** So many lengths of one wire, m each: spools, part spools, odd ends. */
export interface Length {
  readonly wire: string
  readonly lengthM: number
  readonly count: number
}

/** What there is to make a net of. */
export interface Stores {
  readonly wires: readonly Length[]
  readonly sets: readonly Counted[]
  readonly supplies: readonly Counted[]
  readonly cells: readonly Counted[]
}

/** Places that must talk, and what there is to do it with. */
export interface Shelf {
  readonly title: string
  readonly places: readonly Place[]
  /** By the way that the wire takes, m, from each place to each; null where positions tell. */
  readonly distancesM: readonly (readonly number[])[] | null
  /** Who must reach whom, by the indices of places, the lower first. */
  readonly talk: readonly (readonly [number, number])[]
  /** Of those, who may agree on times to call: neither need ring the other. */
  readonly agree: readonly (readonly [number, number])[]
  readonly have: Stores
  /** Entries of its own, beside the built-in ones. */
  readonly own: CatalogEntries
  readonly catalog: Catalog
}

/** Every pair of so many places. */
export const everyPair = (count: number): readonly (readonly [number, number])[] =>
  Array.from({ length: count }, (_, a) =>
    Array.from({ length: count - a - 1 }, (_, k) => [a, a + k + 1] as const),
  ).flat()
