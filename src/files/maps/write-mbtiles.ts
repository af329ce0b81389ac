import type { Extent } from '../../terrain/elevation-grid'
import { sqliteOf } from '../sqlite/sqlite-library'
import { type MapArchive, tilesOver } from './map-archive'

const APPLICATION_ID = 0x4d504258

/**
 * The part of an archive over an extent, down to a zoom, as a database of tiles. Vector tiles are packed by gzip, as such files have them.
 *
 * Source: MBTiles Specification 1.3 (2018).
 */
export async function writeMbtiles(
  archive: MapArchive,
  extent: Extent,
  maxZoom: number,
  wasm: () => Promise<ArrayBuffer>,
  onProgress: (done: number) => void,
): Promise<Blob> {
  const { capi, oo1 } = await sqliteOf(wasm)
  const database = new oo1.DB(':memory:', 'c')
  try {
    database.exec(`PRAGMA application_id = ${APPLICATION_ID};
      CREATE TABLE metadata (name text, value text);
      CREATE TABLE tiles (zoom_level integer, tile_column integer, tile_row integer, tile_data blob);
      CREATE UNIQUE INDEX tile_index ON tiles (zoom_level, tile_column, tile_row);
      BEGIN`)
    let format = 'pbf'
    const places = []
    for (let zoom = archive.minZoom; zoom <= maxZoom; zoom++) places.push(...tilesOver(extent, zoom))
    for (const [i, place] of places.entries()) {
      const bytes = await archive.tile(place)
      if (i % 200 === 0) onProgress(i / places.length)
      if (!bytes) continue
      if (archive.content === 'picture') format = pictureFormat(bytes)
      const kept = archive.content === 'vector' ? await packed(bytes) : bytes
      const { zoom, column, row } = place
      database.exec({
        sql: 'INSERT OR IGNORE INTO tiles VALUES (?, ?, ?, ?)',
        bind: [zoom, column, 2 ** zoom - 1 - row, kept],
      })
    }
    const { westDeg, southDeg, eastDeg, northDeg } = extent
    const said = {
      name: archive.title,
      format,
      bounds: [westDeg, southDeg, eastDeg, northDeg].map((degrees) => degrees.toFixed(6)).join(','),
      minzoom: String(archive.minZoom),
      maxzoom: String(maxZoom),
      attribution: archive.credit,
      type: 'baselayer',
    }
    for (const [name, value] of Object.entries(said))
      database.exec({ sql: 'INSERT INTO metadata VALUES (?, ?)', bind: [name, value] })
    database.exec('COMMIT')
    return new Blob([capi.sqlite3_js_db_export(database) as Uint8Array<ArrayBuffer>])
  } finally {
    database.close()
  }
}

/** By their first bytes: PNG, JPEG, or else WebP. */
const pictureFormat = (bytes: Uint8Array): string =>
  bytes[0] === 0x89 ? 'png' : bytes[0] === 0xff ? 'jpg' : 'webp'

const packed = async (bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array> =>
  new Uint8Array(
    await new Response(new Blob([bytes]).stream().pipeThrough(new CompressionStream('gzip'))).arrayBuffer(),
  )
