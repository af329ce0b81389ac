import type { Places } from '../../plan/places'
import type { Result } from '../../problem'
import { tooLarge } from './places'
import { readCsv } from './read-csv'
import { readGeojson } from './read-geojson'
import { readGpx } from './read-gpx'
import { readKml, readKmz } from './read-kml'
import { formatGeojson, formatGpx, formatKml, formatKmz, formatPlacesCsv } from './write-places'

interface PlaceFile {
  /** What people call such a file. */
  readonly name: string
  readonly type: string
  readonly read: (bytes: Uint8Array) => Result<Places> | Promise<Result<Places>>
  readonly write: (places: Places, title: string) => string | Promise<Uint8Array>
}

/** Files of places that other programs read and write, by their endings. */
export const PLACE_FILES = {
  '.gpx': { name: 'GPX', type: 'application/gpx+xml', read: readGpx, write: formatGpx },
  '.kml': { name: 'KML', type: 'application/vnd.google-earth.kml+xml', read: readKml, write: formatKml },
  '.kmz': { name: 'KMZ', type: 'application/vnd.google-earth.kmz', read: readKmz, write: formatKmz },
  '.csv': { name: 'CSV', type: 'text/csv', read: readCsv, write: formatPlacesCsv },
  '.geojson': { name: 'GeoJSON', type: 'application/geo+json', read: readGeojson, write: formatGeojson },
} as const satisfies Readonly<Record<string, PlaceFile>>

export type PlaceEnding = keyof typeof PLACE_FILES

export const placeEndingOf = (path: string): PlaceEnding | undefined =>
  (Object.keys(PLACE_FILES) as PlaceEnding[]).find((each) => path.toLowerCase().endsWith(each))

/** Reads a file of places by its ending. */
export async function readPlaces(ending: PlaceEnding, bytes: Uint8Array): Promise<Result<Places>> {
  return tooLarge(bytes.length) ?? PLACE_FILES[ending].read(bytes)
}
