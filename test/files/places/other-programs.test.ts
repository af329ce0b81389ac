import { readFileSync } from 'node:fs'
import { gpx, kml } from '@tmcw/togeojson'
import { DOMParser } from '@xmldom/xmldom'
import { unzipSync } from 'fflate'
import { expect, test } from 'vitest'
import { placeEndingOf, readPlaces } from '../../../src/files/places/place-files'
import { readKml } from '../../../src/files/places/read-kml'
import { formatGpx, formatKml } from '../../../src/files/places/write-places'
import type { Position } from '../../../src/geo/position'
import type { Places } from '../../../src/plan/places'

const read = async (path: string): Promise<Places> => {
  const result = await readPlaces(placeEndingOf(path)!, new Uint8Array(readFileSync(path)))
  if (!result.ok) throw new Error(JSON.stringify(result.problems.slice(0, 3)))
  return result.value
}

type Geometry = ReturnType<typeof gpx>['features'][number]['geometry']

interface Seen {
  readonly points: readonly { readonly name: string; readonly note: string; readonly position: Position }[]
  readonly paths: readonly { readonly name: string; readonly positions: readonly Position[] }[]
}

/** An altitude of 0 is none in most KML: `read-kml.ts` says why. Degrees to a centimetre. */
const plain = ([lonDeg, latDeg, elevationM]: readonly (number | undefined)[]): Position => {
  const [lon, lat] = [Number(lonDeg!.toFixed(7)), Number(latDeg!.toFixed(7))]
  return elevationM ? [lon, lat, elevationM] : [lon, lat]
}
const apart = (positions: readonly Position[]) =>
  positions.filter(
    (each, i) => i === 0 || each[0] !== positions[i - 1]![0] || each[1] !== positions[i - 1]![1],
  )

/** The same text as another library reads it: togeojson 7.1.3, which knows GPX and KML from programs of the trade. */
function seenByAnother(text: string, isGpx: boolean): Seen {
  const document = new DOMParser().parseFromString(text, 'text/xml')
  const points: Seen['points'][number][] = []
  const paths: Seen['paths'][number][] = []
  const take = (geometry: Geometry | null, name: string, note: string) => {
    const path = (positions: number[][]) => {
      const each = apart(positions.map(plain))
      if (each.length >= 2) paths.push({ name, positions: each })
    }
    if (geometry?.type === 'Point') points.push({ name, note, position: plain(geometry.coordinates) })
    else if (geometry?.type === 'LineString') path(geometry.coordinates)
    else if (geometry?.type === 'MultiLineString' || geometry?.type === 'Polygon')
      geometry.coordinates.forEach(path)
    else if (geometry?.type === 'GeometryCollection')
      for (const each of geometry.geometries) take(each, name, note)
  }
  for (const { geometry, properties } of (isGpx ? gpx : kml)(document as unknown as Document).features) {
    const said = properties?.desc ?? properties?.cmt ?? properties?.description ?? ''
    const note = typeof said === 'string' ? said : said.value
    // It makes an area of where a picture lies, which is no place.
    if (properties?.['@geometry-type'] !== 'groundoverlay')
      take(geometry, String(properties?.name ?? '').trim(), note.trim())
  }
  return { points, paths }
}

const asSeen = ({ points, paths }: Places): Seen => ({
  points: points.map(({ name, note, position }) => ({ name, note, position: plain(position) })),
  paths: paths.map(({ name, positions }) => ({ name, positions: apart(positions.map(plain)) })),
})

const textOf = (path: string) => {
  const bytes = readFileSync(path)
  return (path.endsWith('.kmz') ? Buffer.from(unzipSync(bytes)['layers/ways.kml']!) : bytes).toString('utf8')
}

// The files in packages were written by a running watch, a phone, a web converter and a globe; those of fixtures/make.sh by
// GPSBabel, GDAL and libkml. How many points and lines each has was counted in it by hand or by `grep -c`.
test.each([
  ['node_modules/gpx-parse/tests/integration/data/route-1.1.gpx', 0, 1],
  ['node_modules/stoplight/gpx/sample-ride.gpx', 0, 1],
  ['node_modules/stoplight/gpx/sample.gpx', 2, 1],
  ['node_modules/leaflet-kml/assets/example1.kml', 4, 16],
  ['node_modules/leaflet-kml/assets/example2.kml', 16, 6],
  ['test/files/places/fixtures/gpsbabel.gpx', 3, 0],
  ['test/files/places/fixtures/gpsbabel-1-0.gpx', 3, 0],
  ['test/files/places/fixtures/gpsbabel-route.gpx', 3, 1],
  ['test/files/places/fixtures/gpsbabel.kml', 6, 1],
  ['test/files/places/fixtures/gdal.gpx', 0, 3],
  ['test/files/places/fixtures/gdal.kml', 0, 3],
  ['test/files/places/fixtures/libkml.kmz', 0, 3],
  ['test/files/places/fixtures/lake.kml', 0, 2],
])('%s is read as another library reads it', async (path, points, paths) => {
  const ours = asSeen(await read(path))
  const theirs = seenByAnother(textOf(path), path.endsWith('.gpx'))
  expect([ours.points.length, ours.paths.length]).toEqual([points, paths])
  expect(ours.points).toEqual(theirs.points)
  // Where a route has no name, the other library takes its first point's.
  const named = theirs.paths.map(({ name, positions }, i) => ({
    name: ours.paths[i]?.name && name,
    positions,
  }))
  expect(ours.paths).toEqual(named)
})

test('what is written is read by another library as it is read here', async () => {
  for (const path of [
    'test/files/places/fixtures/gpsbabel-route.gpx',
    'node_modules/leaflet-kml/assets/example1.kml',
  ]) {
    const places = await read(path)
    expect(seenByAnother(formatGpx(places, 'T'), true)).toEqual(asSeen(places))
    expect(seenByAnother(formatKml(places, 'T'), false)).toEqual(asSeen(places))
  }
})

test('an altitude of 0 that nobody meant is none, and one that is said to be absolute is the sea', async () => {
  const lake = await read('test/files/places/fixtures/lake.kml')
  expect(lake.paths.flatMap(({ positions }) => positions).every((each) => each.length === 2)).toBe(true)
  const shore = { name: 'Shore', note: '', layer: '', position: [67.2, 48.5, 0] as const }
  const again = readKml(new TextEncoder().encode(formatKml({ points: [shore], paths: [] }, '')))
  expect(again.ok && again.value.points).toEqual([shore])
})
