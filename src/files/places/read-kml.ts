import type { Position } from '../../geo/position'
import type { NamedPath, NamedPoint, Places } from '../../plan/places'
import { ok, type Result } from '../../problem'
import { unzipBounded } from '../bounded-unzip'
import { PlaceCollector, refused } from './places'
import { readXml } from './xml-events'

/** Elements that say of themselves what their altitudes are. */
const SHAPES = ['Point', 'LineString', 'Polygon', 'Track']

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

  /** What the geometry being read says its altitudes are. */
  let altitudeMode = ''

  const tuple = (text: string, separator: RegExp | string): Position | undefined => {
    const [lonDeg, latDeg, altitudeM] = text.split(separator).map(Number.parseFloat)
    // Many programs write 0 for an altitude that they do not know; the standard has it ignored unless its mode says otherwise.
    const elevationM = altitudeM === 0 && altitudeMode !== 'absolute' ? undefined : altitudeM
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
      if (SHAPES.includes(name)) altitudeMode = ''
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
      if (name === 'altitudeMode') altitudeMode = text.trim()
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

/** Bytes that the documents of a KMZ may unpack to, at most. */
const MOST_UNPACKED = 32e6

/** All documents in a KMZ: the first links to the others, and some programs put nothing into it but such links. */
export async function readKmz(bytes: Uint8Array): Promise<Result<Places>> {
  const unpacked = await unzipBounded(bytes, (name) => /\.kml$/i.test(name), MOST_UNPACKED)
  if (!unpacked.ok) return unpacked
  const points: NamedPoint[] = []
  const paths: NamedPath[] = []
  let none: Result<Places> = refused('no-kml', '', 'This is no KMZ file: it holds no .kml.')
  for (const document of unpacked.value.values()) {
    const read = readKml(document)
    if (read.ok) {
      for (const each of read.value.points) points.push(each)
      for (const each of read.value.paths) paths.push(each)
    } else if (read.problems[0]?.code === 'no-places') none = read
    else return read
  }
  return points.length + paths.length > 0 ? ok({ points, paths }) : none
}
