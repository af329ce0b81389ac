import type { Position } from '../../geo/position'
import type { Places } from '../../plan/places'
import type { Result } from '../../problem'
import { PlaceCollector, refused } from './places'
import { readXml } from './xml-events'

const POINTS = ['wpt', 'rtept', 'trkpt']

/**
 * Waypoints, routes and tracks of a GPX file; each segment of a track is a path of its own.
 *
 * Source: the schema of GPX 1.1 (Topografix, 2004), which tells 1.0 apart only in what is not read here.
 */
export function readGpx(bytes: Uint8Array): Result<Places> {
  const places = new PlaceCollector()
  const open: string[] = []
  let isGpx = false
  const counts = { wpt: 0, rtept: 0, trkpt: 0 }
  // What the point, and what the way, being read has said of itself so far.
  let point = { name: '', note: '', lonDeg: Number.NaN, latDeg: Number.NaN, elevationM: Number.NaN }
  let way = { name: '', note: '' }
  let positions: Position[] = []
  const segments: Position[][] = []

  const read = readXml(bytes, {
    isDone: () => places.isFull,
    open: (name, attribute) => {
      if (open.length === 0) isGpx = name === 'gpx'
      open.push(name)
      if (POINTS.includes(name)) {
        const degrees = (key: string) => Number.parseFloat(attribute(key) ?? '')
        point = { name: '', note: '', lonDeg: degrees('lon'), latDeg: degrees('lat'), elevationM: Number.NaN }
      }
      if (name === 'trk' || name === 'rte') way = { name: '', note: '' }
      if (name === 'trkseg' || name === 'rte') positions = []
    },
    close: (name, text) => {
      open.pop()
      const parent = open.at(-1) ?? ''
      if (POINTS.includes(parent)) {
        if (name === 'name') point.name = text
        else if (name === 'desc' || (name === 'cmt' && point.note === '')) point.note = text
        else if (name === 'ele') point.elevationM = Number.parseFloat(text)
      }
      if (parent === 'trk' || parent === 'rte') {
        if (name === 'name') way.name = text
        else if (name === 'desc' || (name === 'cmt' && way.note === '')) way.note = text
      }
      if (name === 'wpt' || name === 'rtept' || name === 'trkpt') {
        counts[name]++
        const at = `${name} ${counts[name]}`
        const elevationM = Number.isFinite(point.elevationM) ? point.elevationM : undefined
        const position = places.position(point.lonDeg, point.latDeg, elevationM, at)
        if (name === 'wpt') places.point(point.name, point.note, position, 'Waypoints')
        else if (position) positions.push(position)
      }
      if (name === 'trkseg') segments.push(positions)
      if (name === 'rte') places.path(way.name, way.note, positions, 'Routes')
      if (name === 'trk')
        for (const segment of segments.splice(0)) places.path(way.name, way.note, segment, 'Tracks')
    },
  })
  if (!read.ok) return read
  if (!isGpx) return refused('no-gpx', '', 'This is no GPX file: its first element is not "gpx".')
  return places.result()
}
