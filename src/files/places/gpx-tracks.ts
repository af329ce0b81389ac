import type { TrackPoint } from '../../plan/field-schema'
import { ok, type Result } from '../../problem'
import { PlaceCollector, refused, tooLarge } from './places'
import { readXml } from './xml-events'

/** A time as a receiver writes it: anything else is left out, for a track can do without. */
const isTime = (text: string) => text !== '' && !Number.isNaN(Date.parse(text))

/**
 * Tracks and routes of a GPX file, each with all its segments in their order: places with elevation and time where they are given.
 *
 * Source: the schema of GPX 1.1 (Topografix, 2004).
 */
export function readGpxTracks(bytes: Uint8Array): Result<readonly (readonly TrackPoint[])[]> {
  const large = tooLarge(bytes.length)
  if (large) return large
  const places = new PlaceCollector()
  const open: string[] = []
  const tracks: (readonly TrackPoint[])[] = []
  let isGpx = false
  let track: TrackPoint[] = []
  let point = { lonDeg: Number.NaN, latDeg: Number.NaN, elevationM: Number.NaN, time: '' }
  const read = readXml(bytes, {
    isDone: () => places.isFull,
    open: (name, attribute) => {
      if (open.length === 0) isGpx = name === 'gpx'
      open.push(name)
      if (name === 'trk' || name === 'rte') track = []
      if (name !== 'trkpt' && name !== 'rtept') return
      const degrees = (key: string) => Number.parseFloat(attribute(key) ?? '')
      point = { lonDeg: degrees('lon'), latDeg: degrees('lat'), elevationM: Number.NaN, time: '' }
    },
    close: (name, text) => {
      open.pop()
      if (name === 'ele') point.elevationM = Number.parseFloat(text)
      if (name === 'time') point.time = text.trim()
      if (name === 'trkpt' || name === 'rtept') {
        const { lonDeg, latDeg, elevationM, time } = point
        const known = Number.isFinite(elevationM) ? elevationM : undefined
        const at = places.position(lonDeg, latDeg, known, `${name} ${track.length + 1}`)
        if (at) track.push([at[0], at[1], known ?? null, isTime(time) ? time : null])
      }
      if (name !== 'trk' && name !== 'rte') return
      const way = track.map(([lonDeg, latDeg]) => [lonDeg, latDeg] as const)
      if (track.length > 1) tracks.push(track)
      places.path('', '', way)
    },
  })
  if (!read.ok) return read
  if (!isGpx) return refused('not-gpx', '', 'This is no GPX file: choose one that a receiver has saved.')
  const found = places.result()
  return found.ok ? ok(tracks) : found
}
