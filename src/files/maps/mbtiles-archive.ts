import { bad, ok, type Result } from '../../problem'
import { inflateBounded } from '../bounded-bytes'
import type { SqliteFile } from '../sqlite/sqlite-file'
import {
  DEEPEST_ZOOM,
  extentOfBounds,
  type MapArchive,
  MOST_TILE_BYTES,
  plainWords,
  type TilePlace,
  WHOLE_WORLD,
} from './map-archive'

const VECTOR = ['pbf', 'mvt']
const PICTURE = ['png', 'jpg', 'jpeg', 'webp', 'avif']
/** By an index the least zoom and the most are found at once, whatever the size. */
const LOOK_MS = 600

/**
 * Map tiles in a database of SQLite: rows count from the south, and vector tiles are packed by gzip.
 *
 * Source: MBTiles Specification 1.3 (2018).
 */
export async function mbtilesArchive(name: string, file: SqliteFile): Promise<Result<MapArchive>> {
  const refused = (message: string) => bad({ code: 'no-mbtiles', at: name, message })
  try {
    const said = new Map(
      file.rows('SELECT name, value FROM metadata LIMIT 200').map(([key, value]) => [`${key}`, `${value}`]),
    )
    const zoomOf = (which: 'min' | 'max'): number => {
      const known = said.get(`${which}zoom`) ?? ''
      if (/^\d+$/.test(known)) return Number(known)
      const [[found] = [null]] = file.rows(`SELECT ${which}(zoom_level) FROM tiles`, [], LOOK_MS)
      return found === null ? Number.NaN : Number(found)
    }
    const [minZoom, maxZoom] = [zoomOf('min'), zoomOf('max')]
    if (!(minZoom >= 0 && minZoom <= maxZoom && maxZoom <= DEEPEST_ZOOM))
      return refused('The file holds no tiles: copy or download it again.')
    const format = (said.get('format') ?? '').toLowerCase()
    if (![...VECTOR, ...PICTURE].includes(format))
      return refused(`Its tiles are of the kind “${format.slice(0, 20)}”, which is not read here.`)
    const content = VECTOR.includes(format) ? 'vector' : 'picture'
    const where = 'WHERE zoom_level = ? AND tile_column = ? AND tile_row = ?'
    const values = ({ zoom, column, row }: TilePlace) => [zoom, column, 2 ** zoom - 1 - row]
    return ok({
      content,
      title: said.get('name')?.trim().slice(0, 100) || name,
      credit: plainWords(said.get('attribution') ?? ''),
      extent: extentOfBounds((said.get('bounds') ?? '').split(',').map(Number)) ?? WHOLE_WORLD,
      ...{ minZoom, maxZoom },
      tile: async (place) => {
        const [[bytes] = [null]] = file.rows(`SELECT tile_data FROM tiles ${where} LIMIT 1`, values(place))
        if (!(bytes instanceof Uint8Array) || bytes.length === 0 || bytes.length > MOST_TILE_BYTES)
          return undefined
        const own = bytes.slice()
        const isPacked = own[0] === 0x1f && own[1] === 0x8b
        return isPacked ? inflateBounded(own, MOST_TILE_BYTES, 'gzip') : own
      },
      tileBytes: async (place) => {
        const [[length] = [0]] = file.rows(
          `SELECT length(tile_data) FROM tiles ${where} LIMIT 1`,
          values(place),
        )
        return Number(length ?? 0)
      },
      close: file.close,
    })
  } catch {
    return refused('The file is no MBTiles, or is broken: it lacks the tables that hold tiles.')
  }
}
