import type { Position } from '../../geo/position'
import type { Places } from '../../plan/places'
import type { Result } from '../../problem'
import { unzipBounded } from '../bounded-unzip'
import { PlaceCollector, refused } from './places'
import { readXml } from './xml-events'

/**
 * Points, line strings and tracks of a KML file's placemarks, those inside collections too. An area's outline is a path.
 *
 * Source: OGC KML 2.2 (07-147r2); `gx:Track` of its common extension.
 */
export function readKml(bytes: Uint8Array): Result<Places> {
  const places = new PlaceCollector()
  const open: string[] = []
  let isKml = false
  let count = 0
  let mark = { name: '', note: '' }
  const shapes: { readonly isPoint: boolean; readonly positions: readonly Position[] }[] = []
  let track: Position[] = []
  /** Names of the folders that are open. */
  const folders: string[] = []

  const tuple = (text: string, separator: RegExp | string): Position | undefined => {
    const [lonDeg, latDeg, elevationM] = text.split(separator).map(Number.parseFloat)
    return places.position(lonDeg ?? Number.NaN, latDeg ?? Number.NaN, elevationM, `Placemark ${count}`)
  }

  const read = readXml(bytes, {
    isDone: () => places.isFull,
    open: (name) => {
      if (open.length === 0) isKml = name === 'kml'
      open.push(name)
      if (name === 'Placemark') {
        count++
        mark = { name: '', note: '' }
      }
      if (name === 'Track') track = []
      if (name === 'Folder') folders.push('')
    },
    close: (name, text) => {
      open.pop()
      const parent = open.at(-1) ?? ''
      if (parent === 'Placemark') {
        if (name === 'name') mark.name = text
        if (name === 'description') mark.note = text
      }
      if (name === 'Folder') folders.pop()
      if (parent === 'Folder' && name === 'name') folders[folders.length - 1] = text.trim()
      if (name === 'coordinates' && open.includes('Placemark')) {
        const words = text.trim().split(/\s+/).filter(Boolean)
        shapes.push({
          isPoint: parent === 'Point',
          positions: words.map((word) => tuple(word, ',')).filter((each) => each !== undefined),
        })
      }
      if (name === 'coord') {
        const position = tuple(text.trim(), /\s+/)
        if (position) track.push(position)
      }
      if (name === 'Track') shapes.push({ isPoint: false, positions: track })
      if (name === 'Placemark') {
        for (const { isPoint, positions } of shapes.splice(0)) {
          if (isPoint) places.point(mark.name, mark.note, positions[0], folders.join(' / '))
          else places.path(mark.name, mark.note, positions, folders.join(' / '))
        }
      }
    },
  })
  if (!read.ok) return read
  if (!isKml) return refused('no-kml', '', 'This is no KML file: its first element is not "kml".')
  return places.result()
}

/** Bytes that the document of a KMZ may unpack to, at most. */
const MOST_UNPACKED = 32e6

/** The document in a KMZ: the first `.kml` in the archive. */
export async function readKmz(bytes: Uint8Array): Promise<Result<Places>> {
  let isFound = false
  const isDocument = (name: string) => {
    const isFirst = !isFound && /\.kml$/i.test(name)
    isFound ||= isFirst
    return isFirst
  }
  const unpacked = await unzipBounded(bytes, isDocument, MOST_UNPACKED)
  if (!unpacked.ok) return unpacked
  const [document] = unpacked.value.values()
  return document ? readKml(document) : refused('no-kml', '', 'This is no KMZ file: it holds no .kml.')
}
