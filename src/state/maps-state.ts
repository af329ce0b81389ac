import { signal } from '@preact/signals'
import type { MapFit, Mark } from '../geo/map-fit'
import type { Position } from '../geo/position'
import type { MapFacts, MapKind } from '../jobs/maps/map-spec'
import type { PartWeight } from '../jobs/maps/maps-answers'
import type { Result } from '../problem'
import type { Extent } from '../terrain/elevation-grid'
import type { TileSource } from './online-tiles'

/** A map beneath the net, as lists and the map itself show it. */
export interface BackMap {
  readonly key: string
  readonly name: string
  readonly kind: MapKind
  readonly sizeBytes: number
  /** Undefined while it is being read; null where it cannot be. */
  readonly facts: MapFacts | undefined | null
  readonly isShown: boolean
  /** 0…1. */
  readonly opacity: number
  /** False for what serves only until the page is closed. */
  readonly isKept: boolean
  readonly fit: MapFit | undefined
}

/** A photograph or scan that is being fitted to the ground. */
export interface Fitting {
  /** The map that it already is; undefined for a picture that is new. */
  readonly key: string | undefined
  readonly name: string
  readonly picture: Blob
  readonly marks: readonly Mark[]
}

/** Who reads and keeps maps: put here from outside, so that no screen knows how. The list goes from the lowest to the topmost. */
export interface MapsKeeper {
  readonly add: (files: readonly File[]) => Promise<void>
  readonly remove: (key: string) => Promise<void>
  readonly change: (key: string, change: Partial<Pick<BackMap, 'isShown' | 'opacity'>>) => void
  /** Moves a map up or down by one. */
  readonly move: (key: string, by: 1 | -1) => void
  /** Keeps it in this browser from now on. */
  readonly keep: (key: string) => Promise<void>
  /** Opens a fitted picture's marks again. */
  readonly refit: (key: string) => Promise<void>
  /** Takes a picture as it has been fitted. */
  readonly fitted: (fitting: Fitting, fit: MapFit) => Promise<void>
  readonly tile: (
    key: string,
    place: { readonly zoom: number; readonly column: number; readonly row: number },
    sizePx: number,
    isWanted: () => boolean,
  ) => Promise<ImageBitmap | null>
  /** Makes a map of its own of the part of an archive over an extent, down to a zoom, and keeps it. */
  readonly keepPart: (key: string, extent: Extent, maxZoom: number) => Promise<void>
  /** Makes a map of its own of what an online map has over an extent at these zooms, and keeps it. */
  readonly keepOnline: (source: TileSource, extent: Extent, zooms: readonly number[]) => Promise<void>
  /** About what that would weigh, level by level, as far as there may be kept of it; undefined where the person stopped it. */
  readonly weighOnline: (
    source: TileSource,
    extent: Extent,
  ) => Promise<Result<readonly PartWeight[]> | undefined>
  /** The ground of an extent, even in longitude and latitude, in greys for paper; null where no map that is shown has any. */
  readonly strip: (extent: Extent, width: number, height: number) => Promise<Blob | null>
  readonly weigh: (key: string, extent: Extent) => Promise<readonly PartWeight[] | undefined>
}

/** All that maps beneath the net add to the store. */
export const createMapsState = () => ({
  maps: signal<readonly BackMap[]>([]),
  mapsKeeper: signal<MapsKeeper | null>(null),
  mapsAreOpen: signal(false),
  fitting: signal<Fitting | null>(null),
  /** Who waits for a place that is pointed out on the map; null for nobody. */
  placeWanted: signal<((position: Position) => void) | null>(null),
})
