import wasm from '@sqlite.org/sqlite-wasm/sqlite3.wasm?url'
import { bytesFromBlob } from '../../files/byte-source'
import { geotiffPicture } from '../../files/maps/geotiff-picture'
import type { MapArchive, TilePlace } from '../../files/maps/map-archive'
import { mbtilesArchive } from '../../files/maps/mbtiles-archive'
import { type Picture, tileOfPicture } from '../../files/maps/picture'
import { pmtilesArchive } from '../../files/maps/pmtiles-archive'
import type { PromptFile } from '../../files/sqlite/prompt-file'
import { openSqlite, type SqliteFile } from '../../files/sqlite/sqlite-file'
import { ok, type Result } from '../../problem'
import { archiveTile } from './archive-tile'
import type { MapFacts, MapSpec } from './map-spec'
import { scannedPicture } from './scanned-picture'

/** A map that is ready to be looked at, in a worker. */
export interface OpenedMap {
  readonly facts: MapFacts
  /** The tile's picture, so many px a side; null where there is nothing. */
  readonly tile: (place: TilePlace, sizePx: number) => Promise<ImageBitmap | null>
  /** Where it is an archive of tiles. */
  readonly archive?: MapArchive
}

/** Nearer than its own cells a picture only grows. */
const DEEPEST_PICTURE_ZOOM = 22
/** Farther out a picture is smaller than this part of a tile. */
const SMALLEST_PART = 1 / 32

export async function openMap(spec: MapSpec): Promise<Result<OpenedMap>> {
  const { name, file, kind } = spec
  if (kind === 'pmtiles') return archiveMap(await pmtilesArchive(bytesFromBlob(name, file)))
  if (kind === 'mbtiles') {
    const opened = await openBlob(name, file)
    return opened.ok ? archiveMap(await mbtilesArchive(name, opened.value)) : opened
  }
  const picture =
    kind === 'geotiff' ? await geotiffPicture(bytesFromBlob(name, file)) : await scannedPicture(spec)
  return picture.ok ? ok(pictureMap(name, picture.value)) : picture
}

/** SQLite over a file of the browser, in a worker, where a file can be read at once. */
export const openBlob = (name: string, file: Blob): Promise<Result<SqliteFile>> =>
  openSqlite(promptBlob(name, file), fetchWasm)

export const fetchWasm = async (): Promise<ArrayBuffer> => {
  const response = await fetch(wasm)
  if (!response.ok) throw new Error('the reader of such files has not arrived')
  return response.arrayBuffer()
}

function promptBlob(name: string, file: Blob): PromptFile {
  const reader = new FileReaderSync()
  return {
    ...{ name, sizeBytes: file.size },
    readNow: (offset, length) =>
      new Uint8Array(reader.readAsArrayBuffer(file.slice(offset, offset + length))),
  }
}

function archiveMap(result: Result<MapArchive>): Result<OpenedMap> {
  if (!result.ok) return result
  const archive = result.value
  const { content, title, credit, extent, minZoom, maxZoom } = archive
  const tile: OpenedMap['tile'] = (place, sizePx) => archiveTile(archive, place, sizePx)
  return ok({ facts: { content, title, credit, extent, minZoom, maxZoom }, tile, archive })
}

function pictureMap(name: string, picture: Picture): OpenedMap {
  const { westDeg, eastDeg } = picture.extent
  const farthest = Math.floor(Math.log2((360 * SMALLEST_PART) / Math.max(1e-6, eastDeg - westDeg)))
  return {
    facts: {
      ...{ content: 'picture', title: name, credit: '', extent: picture.extent, shift: picture.shift },
      ...{ minZoom: Math.max(0, farthest), maxZoom: DEEPEST_PICTURE_ZOOM },
    },
    tile: async (place, sizePx) => {
      const cells = await tileOfPicture(picture, place, sizePx)
      return cells ? createImageBitmap(new ImageData(cells.data, cells.columns, cells.rows)) : null
    },
  }
}
