import type { Position } from '../geo/position'
import type { FeatureProperty, HazardFeature, HazardFeatures } from '../hazard/hazard-features'
import { AREA, PATH, toPosition } from '../plan/feature-schema'
import type { Hazard } from '../plan/plan'
import { bad, ok, type Problem, type Result } from '../problem'
import { faultsOf, placeOf } from '../schema/faults'
import { numberWords, valueWords } from '../schema/limit'
import { isObject, listOf, type Members, type Schema } from '../schema/schema'
import { parseJson } from './json-text'
import { MOST_POINTS } from './places/places'
import { textOf } from './text-bytes'

/** A file of roads of a whole country would bury the plan. */
const MOST_FEATURES = 20_000
const MOST_LISTED = 50

const PATHS = listOf('The list of lines', PATH)
const AREAS = listOf('The list of areas', AREA)
/** GeoJSON before RFC 7946 could name another system of coordinates; these two are WGS 84. */
const WGS_84 = /CRS84|EPSG:{1,2}4326$/i

/** The same of a file's bytes. */
export function parseHazardBytes(bytes: Uint8Array): Result<HazardFeatures> {
  const text = textOf(bytes)
  return text.ok ? parseHazardFeatures(text.value) : text
}

/** Reads the lines and areas of any GeoJSON file (RFC 7946); each of a multiple geometry is one. */
export function parseHazardFeatures(text: string): Result<HazardFeatures> {
  const json = parseJson(text)
  if (!json.ok) return json
  const file = json.value
  const fault = (code: string, at: string, message: string) => bad({ code, at, message })
  if (!isObject(file) || !Array.isArray(file.features)) {
    return fault(
      'no-features',
      'features',
      'This is no collection of features: choose a GeoJSON file with a list "features".',
    )
  }
  const system = isObject(file.crs) && isObject(file.crs.properties) ? file.crs.properties.name : undefined
  if (typeof system === 'string' && !WGS_84.test(system)) {
    const message = `Its coordinates are in ${valueWords(system)}: save it in WGS 84 longitude and latitude (EPSG:4326).`
    return fault('other-system', 'crs', message)
  }
  const faults: Problem[] = []
  const features: HazardFeature[] = []
  let leftOut = 0
  for (const [i, feature] of file.features.entries()) {
    const found = isObject(feature) ? geometriesOf(feature.geometry, `features[${i}].geometry`, faults) : []
    if (found.length === 0) leftOut++
    const properties = textsOf(isObject(feature) ? feature.properties : undefined)
    for (const geometry of found) features.push({ geometry, properties })
  }
  if (faults.length > 0) return bad(...faults.slice(0, MOST_LISTED))
  if (features.length === 0) {
    return fault('no-hazards', 'features', 'The file has no line and no area: only these can be hazards.')
  }
  if (features.length > MOST_FEATURES) {
    const message = `The file has ${numberWords(features.length)} lines and areas: cut out the part around the plan, of at most ${numberWords(MOST_FEATURES)}.`
    return fault('too-many', 'features', message)
  }
  const points = features.reduce((sum, { geometry }) => sum + cornersOf(geometry), 0)
  if (points > MOST_POINTS) {
    const message = `Its lines and areas have ${numberWords(points)} corners: cut out the part around the plan, of at most ${numberWords(MOST_POINTS)}.`
    return fault('too-many', 'features', message)
  }
  return ok({ features, properties: propertiesOf(features), leftOut })
}

const cornersOf = (geometry: Hazard['geometry']): number =>
  geometry.type === 'LineString'
    ? geometry.coordinates.length
    : geometry.coordinates.reduce((sum, ring) => sum + ring.length, 0)

type Coordinates = readonly Position[]

function geometriesOf(geometry: unknown, at: string, faults: Problem[]): Hazard['geometry'][] {
  if (!isObject(geometry)) return []
  const parts = geometry.type === 'GeometryCollection' ? geometry.geometries : undefined
  if (Array.isArray(parts))
    return parts.flatMap((part, i) => geometriesOf(part, `${at}.geometries[${i}]`, faults))
  const { coordinates } = geometry
  const place = placeOf(at, 'coordinates')
  const checked = <T>(schema: Schema, make: (sound: never) => T): T[] => {
    const found = faultsOf(schema, coordinates, place)
    faults.push(...found)
    return found.length > 0 ? [] : [make(coordinates as never)]
  }
  const line = (path: Coordinates): Hazard['geometry'] => ({
    type: 'LineString',
    coordinates: path.map(flat),
  })
  const area = (rings: readonly Coordinates[]): Hazard['geometry'] => ({
    type: 'Polygon',
    coordinates: rings.map((each) => each.map(flat)),
  })
  switch (geometry.type) {
    case 'LineString':
      return checked(PATH, line)
    case 'Polygon':
      return checked(AREA, area)
    case 'MultiLineString':
      return checked(PATHS, (all: readonly Coordinates[]) => all.map(line)).flat()
    case 'MultiPolygon':
      return checked(AREAS, (all: readonly (readonly Coordinates[])[]) => all.map(area)).flat()
    default:
      return []
  }
}

/** A hazard's own height means nothing here. */
const flat = ([lonDeg, latDeg]: Position): Position => toPosition([lonDeg, latDeg])

const textsOf = (properties: unknown): Record<string, string> =>
  Object.fromEntries(
    Object.entries(isObject(properties) ? properties : ({} as Members)).flatMap(([name, value]) =>
      ['string', 'number', 'boolean'].includes(typeof value) && value !== '' ? [[name, String(value)]] : [],
    ),
  )

function propertiesOf(features: readonly HazardFeature[]): FeatureProperty[] {
  const counts = new Map<string, Map<string, number>>()
  for (const { properties } of features) {
    for (const [name, value] of Object.entries(properties)) {
      const values = counts.get(name) ?? new Map<string, number>()
      counts.set(name, values.set(value, (values.get(value) ?? 0) + 1))
    }
  }
  return [...counts].map(([name, values]) => ({
    name,
    values: [...values].map(([value, count]) => ({ value, count })).sort((a, b) => b.count - a.count),
  }))
}
