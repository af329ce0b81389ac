import {
  Compression,
  findTile,
  PMTiles,
  ResolvedValueCache,
  type Source,
  TileType,
  zxyToTileId,
} from 'pmtiles'
import { bad, ok, type Result } from '../../problem'
import { inflateBounded } from '../bounded-bytes'
import type { ByteSource } from '../byte-source'
import {
  DEEPEST_ZOOM,
  extentOfBounds,
  type MapArchive,
  MOST_TILE_BYTES,
  plainWords,
  WHOLE_WORLD,
} from './map-archive'

/** Directories inside one another, at most. PMTiles 3, section 4. */
const DEEPEST_DIRECTORY = 4
/** A directory or the words about the map are no longer, unpacked. */
const MOST_DIRECTORY_BYTES = 64e6

/**
 * Map tiles in one file, ordered along a curve, of which only what is looked at is read.
 *
 * Source: PMTiles Version 3 Specification (2022), by the package pmtiles; unpacking stops at a bound.
 */
export async function pmtilesArchive(source: ByteSource): Promise<Result<MapArchive>> {
  const refused = (message: string) => bad({ code: 'no-pmtiles', at: source.name, message })
  const bytes: Source = {
    getKey: () => source.name,
    getBytes: async (offset, length) => {
      if (!(offset >= 0 && offset <= source.sizeBytes && length <= MOST_DIRECTORY_BYTES))
        throw new RangeError('beyond the end')
      const read = await source.read(offset, Math.min(length, source.sizeBytes - offset))
      return { data: read.slice().buffer }
    },
  }
  const unpack = async (packed: ArrayBuffer, how: Compression): Promise<ArrayBuffer> => {
    if (how === Compression.None || how === Compression.Unknown) return packed
    if (how !== Compression.Gzip) throw new RangeError('a packing that is not read here')
    return (await inflateBounded(new Uint8Array(packed), MOST_DIRECTORY_BYTES, 'gzip')).buffer
  }
  try {
    const cache = new ResolvedValueCache(64, true, unpack)
    const archive = new PMTiles(bytes, cache, unpack)
    const header = await archive.getHeader()
    const { minZoom, maxZoom, tileType } = header
    const isPicture = [TileType.Png, TileType.Jpeg, TileType.Webp, TileType.Avif].includes(tileType)
    if (!isPicture && tileType !== TileType.Mvt)
      return refused('Its tiles are of a kind that is not read here: neither pictures nor vector tiles.')
    if (!(minZoom <= maxZoom && maxZoom <= DEEPEST_ZOOM))
      return refused('The file is broken: its zooms are absurd.')
    const said = (await archive.getMetadata().catch(() => ({}))) as Readonly<Record<string, unknown>> | null
    const word = (key: string) => (typeof said?.[key] === 'string' ? (said[key] as string) : '')
    const tileBytes: MapArchive['tileBytes'] = async ({ zoom, column, row }) => {
      if (zoom < minZoom || zoom > maxZoom) return 0
      const id = zxyToTileId(zoom, column, row)
      let [offset, length] = [header.rootDirectoryOffset, header.rootDirectoryLength]
      for (let depth = 0; depth < DEEPEST_DIRECTORY; depth++) {
        const entry = findTile(await cache.getDirectory(bytes, offset, length, header), id)
        if (!entry) return 0
        if (entry.runLength > 0) return entry.length
        offset = header.leafDirectoryOffset + entry.offset
        length = entry.length
      }
      return 0
    }
    return ok({
      content: isPicture ? 'picture' : 'vector',
      title: word('name').trim().slice(0, 100) || source.name,
      credit: plainWords(word('attribution')),
      extent: extentOfBounds([header.minLon, header.minLat, header.maxLon, header.maxLat]) ?? WHOLE_WORLD,
      ...{ minZoom, maxZoom, tileBytes },
      tile: async ({ zoom, column, row }) => {
        const found = await archive.getZxy(zoom, column, row)
        if (!found || found.data.byteLength === 0 || found.data.byteLength > MOST_TILE_BYTES) return undefined
        return new Uint8Array(found.data)
      },
      close: () => undefined,
    })
  } catch {
    return refused('The file is no PMTiles of version 3, or is broken: copy or download it again.')
  }
}
