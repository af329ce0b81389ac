import type { Extent } from '../../terrain/elevation-grid'

/** A tile of the map of the whole world: column and row from the north-west, at 2^zoom a side. */
export interface TilePlace {
  readonly zoom: number
  readonly column: number
  readonly row: number
}

/** What an archive of map tiles says of itself. */
export interface ArchiveFacts {
  /** `picture`: PNG, JPEG, WebP or AVIF · `vector`: Mapbox Vector Tiles, to be painted */
  readonly content: 'picture' | 'vector'
  readonly title: string
  /** Whose data it is; empty where it does not say. */
  readonly credit: string
  readonly extent: Extent
  readonly minZoom: number
  readonly maxZoom: number
}

/** Tiles of a map in one file, read one by one. */
export interface MapArchive extends ArchiveFacts {
  /** The tile's bytes, unpacked; undefined where the archive has none there. */
  readonly tile: (place: TilePlace) => Promise<Uint8Array<ArrayBuffer> | undefined>
  /** How long its bytes are in the file; 0 where there are none. */
  readonly tileBytes: (place: TilePlace) => Promise<number>
  readonly close: () => void
}

/** No tile is longer, packed or unpacked. */
export const MOST_TILE_BYTES = 16e6
/** Deepest zoom that a scheme of tiles has: beyond, rows no longer count exactly everywhere. */
export const DEEPEST_ZOOM = 24

/** Where the map of the whole world ends, °. */
const MOST_LAT_DEG = 85.0511287798

const columnOf = (lonDeg: number, zoom: number): number => ((lonDeg + 180) / 360) * 2 ** zoom
const rowOf = (latDeg: number, zoom: number): number => {
  const lat = (Math.max(-MOST_LAT_DEG, Math.min(MOST_LAT_DEG, latDeg)) * Math.PI) / 180
  return (0.5 - Math.asinh(Math.tan(lat)) / (2 * Math.PI)) * 2 ** zoom
}

/** How many tiles of a zoom cover an extent. */
export function countOfTiles(extent: Extent, zoom: number): number {
  const { left, right, top, bottom } = tileSpan(extent, zoom)
  return (right - left + 1) * (bottom - top + 1)
}

function tileSpan({ westDeg, southDeg, eastDeg, northDeg }: Extent, zoom: number) {
  const last = 2 ** zoom - 1
  const within = (n: number) => Math.max(0, Math.min(last, Math.floor(n)))
  return {
    left: Math.floor(columnOf(westDeg, zoom)),
    // An edge that is shared belongs to the tile before it.
    right: Math.max(Math.floor(columnOf(westDeg, zoom)), Math.ceil(columnOf(eastDeg, zoom)) - 1),
    top: within(rowOf(northDeg, zoom)),
    bottom: within(rowOf(southDeg, zoom)),
  }
}

/** The tiles of a zoom that cover an extent; columns east of the antimeridian start anew. */
export function* tilesOver(extent: Extent, zoom: number): Generator<TilePlace> {
  const { left, right, top, bottom } = tileSpan(extent, zoom)
  const around = 2 ** zoom
  for (let column = left; column <= right; column++)
    for (let row = top; row <= bottom; row++)
      yield { zoom, column: ((column % around) + around) % around, row }
}

/** An extent from four figures, as archives have them; undefined where they are none. */
export function extentOfBounds(bounds: readonly number[]): Extent | undefined {
  const [westDeg, southDeg, eastDeg, northDeg] = bounds
  if (bounds.length !== 4 || !bounds.every(Number.isFinite)) return undefined
  if (Math.abs(westDeg!) > 360 || Math.abs(eastDeg!) > 360 || westDeg! >= eastDeg! || southDeg! >= northDeg!)
    return undefined
  return { westDeg: westDeg!, southDeg: southDeg!, eastDeg: eastDeg!, northDeg: northDeg! }
}

export const WHOLE_WORLD: Extent = { westDeg: -180, southDeg: -85, eastDeg: 180, northDeg: 85 }

/** A credit as archives have it, without its markup: it is shown as words. */
export const plainWords = (text: string): string =>
  text
    .slice(0, 2000)
    .replaceAll(/<[^>]*>/g, '')
    .replaceAll('&copy;', '©')
    .replaceAll('&amp;', '&')
    .trim()
    .slice(0, 200)
