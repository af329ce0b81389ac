import { type MapArchive, type TilePlace, tilesOver } from '../../files/maps/map-archive'
import type { Places } from '../../plan/places'
import { ok, type Result } from '../../problem'
import type { Extent } from '../../terrain/elevation-grid'
import type { Tell } from '../protocol'
import { groundStrip, type StripLayer } from './ground-strip'
import type { MapFacts, MapSpec } from './map-spec'
import { fetchWasm, type OpenedMap, openBlob, openMap } from './opened-map'

/** What part of an archive weighs, level by level. */
export interface PartWeight {
  readonly zoom: number
  readonly tiles: number
  readonly bytes: number
}

/** A tile as a server sent it. */
export interface FetchedTile {
  readonly place: TilePlace
  readonly bytes: Uint8Array<ArrayBuffer>
}

/** Tiles of one online map, and what is to be said of them. */
export interface FetchedTiles {
  readonly tiles: readonly FetchedTile[]
  readonly title: string
  readonly credit: string
  readonly extent: Extent
}

const keyOf = ({ zoom, column, row }: TilePlace) => `${zoom}/${column}/${row}`

/** What is wanted of the ground for paper: maps from the lowest to the topmost, and how many dots. */
export interface StripQuestion {
  readonly layers: readonly { readonly key: string; readonly opacity: number }[]
  readonly extent: Extent
  readonly width: number
  readonly height: number
}

/** Tiles weighed for one part, at most: beyond, a person waits too long, and the part is too large to keep anyway. */
const MOST_TILES = 40_000

let specs: readonly MapSpec[] = []
const opened = new Map<string, Promise<Result<OpenedMap>>>()

function openedOf(key: string): Promise<Result<OpenedMap>> | undefined {
  const spec = specs.find((each) => each.key === key)
  if (!spec) return undefined
  const open = opened.get(key) ?? openMap(spec)
  opened.set(key, open)
  return open
}

export const MAPS_JOBS = {
  /** The maps that are at hand from now. */
  specs: (next: readonly MapSpec[]): void => {
    for (const { key, fit } of specs) {
      if (next.some((each) => each.key === key && JSON.stringify(each.fit) === JSON.stringify(fit))) continue
      void opened.get(key)?.then((map) => map.ok && map.value.archive?.close())
      opened.delete(key)
    }
    specs = next
  },
  facts: async (key: string): Promise<Result<MapFacts> | null> => {
    const map = await openedOf(key)
    return map ? (map.ok ? ok(map.value.facts) : map) : null
  },
  /** Null where there is nothing. */
  tile: async (
    { key, place, sizePx }: { readonly key: string; readonly place: TilePlace; readonly sizePx: number },
    tell: Tell<never>,
  ): Promise<ImageBitmap | null> => {
    const map = await openedOf(key)
    const picture = map?.ok ? await map.value.tile(place, sizePx) : null
    if (picture) tell.handOver(picture)
    return picture
  },
  strip: async ({ layers, extent, width, height }: StripQuestion): Promise<Blob | null> => {
    const maps: StripLayer[] = []
    for (const { key, opacity } of layers) {
      const map = await openedOf(key)
      if (map?.ok) maps.push({ map: map.value, opacity })
    }
    return groundStrip(maps, extent, width, height)
  },
  /** The places in a GeoPackage, which the same library reads. */
  geopackage: async (file: File): Promise<Result<Places>> => {
    const { readGeopackage } = await import('../../files/places/read-geopackage')
    const opened = await openBlob(file.name, file)
    if (!opened.ok) return opened
    const places = await readGeopackage(opened.value)
    opened.value.close()
    return places
  },
  /** The part of an archive over an extent, down to a zoom, as a file of MBTiles; null where it is no archive. */
  part: async (
    { key, extent, maxZoom }: { readonly key: string; readonly extent: Extent; readonly maxZoom: number },
    tell: Tell<number>,
  ): Promise<Blob | null> => {
    const map = await openedOf(key)
    const archive = map?.ok ? map.value.archive : undefined
    if (!archive) return null
    const { writeMbtiles } = await import('../../files/maps/write-mbtiles')
    return writeMbtiles(archive, extent, maxZoom, fetchWasm, tell.part)
  },
  /** Tiles that were fetched, as a file of MBTiles. */
  pack: async ({ tiles, title, credit, extent }: FetchedTiles): Promise<Blob> => {
    const { writeMbtiles } = await import('../../files/maps/write-mbtiles')
    const bytesAt = new Map(tiles.map(({ place, bytes }) => [keyOf(place), bytes]))
    const zooms = tiles.map(({ place }) => place.zoom)
    const maxZoom = Math.max(...zooms)
    const archive: MapArchive = {
      ...{ content: 'picture', title, credit, extent, minZoom: Math.min(...zooms), maxZoom },
      tile: async (place) => bytesAt.get(keyOf(place)),
      tileBytes: async (place) => bytesAt.get(keyOf(place))?.length ?? 0,
      close: () => undefined,
    }
    return writeMbtiles(archive, extent, maxZoom, fetchWasm, () => undefined)
  },
  /** What the part of an archive over an extent weighs; null where it is no archive, or the part has too many tiles. */
  weigh: async ({ key, extent }: { readonly key: string; readonly extent: Extent }) => {
    const map = await openedOf(key)
    const archive = map?.ok ? map.value.archive : undefined
    if (!archive) return null
    const levels: PartWeight[] = []
    let count = 0
    for (let zoom = archive.minZoom; zoom <= archive.maxZoom; zoom++) {
      let [tiles, bytes] = [0, 0]
      for (const place of tilesOver(extent, zoom)) {
        if (++count > MOST_TILES) return null
        const length = await archive.tileBytes(place)
        if (length > 0) tiles++
        bytes += length
      }
      levels.push({ zoom, tiles, bytes })
    }
    return levels
  },
}
