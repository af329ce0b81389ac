import type { Position } from '../../geo/position'
import type { Places } from '../../plan/places'
import type { Result } from '../../problem'
import { parseJson } from '../json-text'
import { textOf } from '../text-bytes'
import { PlaceCollector, refused } from './places'

type Members = Readonly<Record<string, unknown>>
const membersOf = (value: unknown): Members =>
  typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Members) : {}
const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : [])
const wordOf = (value: unknown): string =>
  typeof value === 'string' ? value : typeof value === 'number' ? String(value) : ''

const firstWord = (members: Members, names: readonly string[]): string =>
  names.map((name) => wordOf(members[name])).find((word) => word !== '') ?? ''

/** Points and lines of any GeoJSON, collections and multiples among them; the outlines of areas are paths. Source: RFC 7946 (2016). */
export function readGeojson(bytes: Uint8Array): Result<Places> {
  const text = textOf(bytes)
  if (!text.ok) return text
  const json = parseJson(text.value)
  if (!json.ok) return json
  const { type } = membersOf(json.value)
  if (typeof type !== 'string')
    return refused('no-geojson', 'type', 'This is no GeoJSON: it has no member "type".')

  const places = new PlaceCollector()
  const position = (value: unknown, at: string): Position | undefined => {
    const [lonDeg, latDeg, elevationM] = listOf(value).map((each) =>
      typeof each === 'number' ? each : Number.NaN,
    )
    return places.position(lonDeg ?? Number.NaN, latDeg ?? Number.NaN, elevationM, at)
  }
  const positions = (value: unknown, at: string): Position[] => {
    const found: Position[] = []
    for (const each of listOf(value)) {
      if (places.isFull) break
      const one = position(each, at)
      if (one) found.push(one)
    }
    return found
  }

  const takeGeometry = (value: unknown, name: string, note: string, at: string, depth = 0): void => {
    const { type: kind, coordinates, geometries } = membersOf(value)
    const point = (each: unknown) => places.point(name, note, position(each, at))
    const path = (each: unknown) => places.path(name, note, positions(each, at))
    if (kind === 'Point') point(coordinates)
    else if (kind === 'MultiPoint') for (const each of listOf(coordinates)) point(each)
    else if (kind === 'LineString') path(coordinates)
    else if (kind === 'MultiLineString' || kind === 'Polygon')
      for (const each of listOf(coordinates)) path(each)
    else if (kind === 'MultiPolygon')
      for (const rings of listOf(coordinates)) for (const ring of listOf(rings)) path(ring)
    else if (kind === 'GeometryCollection' && depth < 8)
      for (const each of listOf(geometries)) takeGeometry(each, name, note, at, depth + 1)
  }
  const takeFeature = (value: unknown, at: string): void => {
    const { geometry, properties } = membersOf(value)
    const about = membersOf(properties)
    const name = firstWord(about, ['name', 'Name', 'NAME', 'title', 'label'])
    const note = firstWord(about, ['note', 'desc', 'description', 'comment'])
    takeGeometry(geometry, name, note, at)
  }

  if (type === 'FeatureCollection') {
    for (const [index, each] of listOf(membersOf(json.value).features).entries()) {
      if (places.isFull) break
      takeFeature(each, `features[${index}]`)
    }
  } else if (type === 'Feature') takeFeature(json.value, 'the feature')
  else takeGeometry(json.value, '', '', 'the geometry')
  return places.result()
}
