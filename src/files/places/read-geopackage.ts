import type { Position } from '../../geo/position'
import { type Projection, projectionOf } from '../../geo/projection'
import type { Places } from '../../plan/places'
import type { Result } from '../../problem'
import type { SqliteFile } from '../sqlite/sqlite-file'
import { crsOfCode } from '../systems/crs-of-code'
import { MOST_POINTS, PlaceCollector, refused } from './places'
import { readWkb, type Shape } from './read-wkb'

/** Names of columns that hold a name, and a note, the likeliest first. */
const NAMES = ['name', 'title', 'label', 'bezeichnung', 'nom', 'nombre', 'id_name']
const NOTES = ['note', 'desc', 'description', 'comment', 'remark', 'cmt']
/** Feature tables of one file, at most: beyond, nobody chooses among them. */
const MOST_LAYERS = 60

/** A name as SQL quotes it. */
const quoted = (name: string): string => `"${name.replaceAll('"', '""')}"`

/**
 * Points, lines and the outlines of areas in the feature tables of a GeoPackage, each table a layer; in any coordinate system that is known.
 *
 * Source: OGC 12-128r18, GeoPackage Encoding Standard 1.3.1 (2021), sections 1.1 and 2.1.
 */
export async function readGeopackage(file: SqliteFile): Promise<Result<Places>> {
  const places = new PlaceCollector()
  try {
    const layers = file.rows(
      `SELECT c.table_name, c.identifier, g.column_name, s.organization, s.organization_coordsys_id
       FROM gpkg_contents c JOIN gpkg_geometry_columns g ON g.table_name = c.table_name
       LEFT JOIN gpkg_spatial_ref_sys s ON s.srs_id = g.srs_id
       WHERE c.data_type = 'features' LIMIT ${MOST_LAYERS}`,
    )
    for (const [table, identifier, geometry, organization, code] of layers) {
      const name = String(table)
      const projection = await projectionOfSystem(String(organization), Number(code))
      if (!projection)
        return refused(
          'unknown-crs',
          name,
          `The table “${name.slice(0, 60)}” lies in a coordinate system that is not known here (${String(organization).slice(0, 20)}:${Number(code)}). Save it in WGS 84 (EPSG:4326).`,
        )
      takeLayer(places, file, {
        name,
        title: String(identifier || name),
        geometry: String(geometry),
        projection,
      })
      if (places.isFull) break
    }
  } catch {
    return refused('no-geopackage', '', 'The file is no GeoPackage, or is broken: copy or save it again.')
  }
  return places.result()
}

async function projectionOfSystem(organization: string, code: number): Promise<Projection | undefined> {
  const crs = organization.toUpperCase() === 'EPSG' ? await crsOfCode(code) : undefined
  return crs && projectionOf(crs)
}

interface Layer {
  readonly name: string
  readonly title: string
  readonly geometry: string
  readonly projection: Projection
}

function takeLayer(
  places: PlaceCollector,
  file: SqliteFile,
  { name, title, geometry, projection }: Layer,
): void {
  const columns = file.rows(`PRAGMA table_info(${quoted(name)})`).map(([, column]) => String(column))
  const columnOf = (words: readonly string[]) =>
    words.map((word) => columns.find((each) => each.toLowerCase() === word)).find(Boolean)
  const chosen = [geometry, columnOf(NAMES), columnOf(NOTES)]
    .map((column) => (column === undefined ? 'NULL' : quoted(column)))
    .join(', ')
  const rows = file.rows(`SELECT ${chosen} FROM ${quoted(name)} LIMIT ${MOST_POINTS + 1}`)
  for (const [row, [bytes, said, noted]] of rows.entries()) {
    if (places.isFull) return
    if (!(bytes instanceof Uint8Array)) continue
    const at = `${name}, row ${row + 1}`
    const shapes = shapesOf(bytes)
    if (!shapes) {
      places.fault(at, 'has a shape that cannot be read: save the file again')
      continue
    }
    const position = ([x, y, z]: readonly number[]): Position | undefined => {
      const [lonDeg, latDeg] = projection.inverse(x!, y!)
      return places.position(lonDeg, latDeg, z, at)
    }
    for (const { isPoint, coordinates } of shapes) {
      const positions = coordinates.map(position).filter((each) => each !== undefined)
      const [label, note] = [String(said ?? ''), String(noted ?? '')]
      if (isPoint) for (const each of positions) places.point(label, note, each, title)
      else places.path(label, note, positions, title)
    }
  }
}

const ENVELOPE_BYTES = [0, 32, 48, 48, 64]

/** Shapes of a geometry as GeoPackage packs it: a head with an envelope, then well-known binary. Same source, section 2.1.3. */
function shapesOf(bytes: Uint8Array): readonly Shape[] | undefined {
  if (bytes[0] !== 0x47 || bytes[1] !== 0x50) return undefined
  const flags = bytes[3] ?? 0
  const envelope = ENVELOPE_BYTES[(flags >> 1) & 7]
  if (envelope === undefined) return undefined
  if ((flags & 0x10) !== 0) return []
  return readWkb(bytes.subarray(8 + envelope))
}
