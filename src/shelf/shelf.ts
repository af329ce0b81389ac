import type { Catalog, CatalogEntries } from '../catalog/catalog'
import type { Position } from '../geo/position'
import type { Weather } from '../plan/plan'

/** A place that must have a telephone. */
export interface Place {
  readonly id: string
  readonly name: string
  /** Null where only distances are known. */
  readonly position: Position | null
}

/** What a meter read of a thing, by the member of its entry. */
export type MeasuredFigures = Readonly<Record<string, number>>

/** So many of one thing. */
export interface Counted {
  readonly id: string
  readonly count: number
  readonly measured?: MeasuredFigures
}

/** So many lengths of one wire, m each: spools, part spools, odd ends. */
export interface Length {
  readonly wire: string
  readonly lengthM: number
  readonly count: number
  /** Pairs that may be laid as one; absent: one. */
  readonly pairs?: number
  /** One conductor, and no pair. */
  readonly isSingle?: true
  readonly measured?: MeasuredFigures
}

/** What there is to make a net of. */
export interface Stores {
  readonly wires: readonly Length[]
  readonly sets: readonly Counted[]
  readonly supplies: readonly Counted[]
  readonly cells: readonly Counted[]
  /** Earth rods, for a return through the ground. */
  readonly rods: readonly Counted[]
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
  readonly weather: Weather
  /** Of the conductor, °C. */
  readonly wireTempC: number
  /** Id of the ground in which rods are driven. */
  readonly soil: string
  readonly have: Stores
  /** Entries of its own, beside the built-in ones; those that were measured among them. */
  readonly own: CatalogEntries
  readonly catalog: Catalog
}

/** Every pair of so many places. */
export const everyPair = (count: number): readonly (readonly [number, number])[] =>
  Array.from({ length: count }, (_, a) =>
    Array.from({ length: count - a - 1 }, (_, k) => [a, a + k + 1] as const),
  ).flat()
