import type { Position } from '../../geo/position'
import type { Places } from '../../plan/places'
import { formatTableCsv } from '../table-csv'

/** What XML 1.0 has a character for: its production 2. */
const isXmlCharacter = (character: string): boolean => {
  const point = character.codePointAt(0)!
  if (point < 0x20) return point === 0x9 || point === 0xa || point === 0xd
  return point < 0xd800 || (point >= 0xe000 && point < 0xfffe) || point >= 0x10000
}

/** Text inside XML; what XML has no character for is left out. */
const xml = (text: string): string =>
  Array.from(text)
    .filter(isXmlCharacter)
    .join('')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')

const element = (name: string, text: string) => (text === '' ? '' : `<${name}>${xml(text)}</${name}>`)

/** A number with so many decimals at most, and never as a power of ten: a decimal of XML Schema has none. */
const decimal = (n: number, digits: number): string => {
  const text = n.toFixed(digits).replace(/\.?0+$/, '')
  return text === '-0' ? '0' : text
}
/** Degrees to a centimetre. */
const degrees = (deg: number): string => decimal(deg, 7)
const height = ([, , elevationM]: Position) => (elevationM === undefined ? '' : decimal(elevationM, 2))

/** Waypoints and tracks. Source: the schema of GPX 1.1 (Topografix, 2004), and the order of its elements. */
export function formatGpx({ points, paths }: Places, title: string): string {
  // Its longitudes end below 180.
  const at = (p: Position) => `lat="${degrees(p[1])}" lon="${degrees(p[0] === 180 ? -180 : p[0])}"`
  const about = (name: string, note: string) => `${element('name', name)}${element('desc', note)}`
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<gpx version="1.1" creator="Fieldpair" xmlns="http://www.topografix.com/GPX/1/1">',
    `<metadata>${element('name', title)}</metadata>`,
    ...points.map(
      ({ name, note, position }) =>
        `<wpt ${at(position)}>${element('ele', height(position))}${about(name, note)}</wpt>`,
    ),
    ...paths.map(
      ({ name, note, positions }) =>
        `<trk>${about(name, note)}<trkseg>\n${positions.map((p) => `<trkpt ${at(p)}>${element('ele', height(p))}</trkpt>`).join('\n')}\n</trkseg></trk>`,
    ),
    '</gpx>\n',
  ].join('\n')
}

const tuple = (position: Position) =>
  [degrees(position[0]), degrees(position[1]), height(position)].filter((each) => each !== '').join(',')

/** Many programs write an altitude of 0 for none: only where it is said to be absolute is it meant. */
const altitudeMode = (positions: readonly Position[]) =>
  positions.some(([, , elevationM]) => elevationM === 0) ? element('altitudeMode', 'absolute') : ''

/** Placemarks with points and line strings. Source: OGC KML 2.2 (07-147r2). */
export const formatKml = ({ points, paths }: Places, title: string): string =>
  [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<kml xmlns="http://www.opengis.net/kml/2.2"><Document>${element('name', title)}`,
    ...points.map(
      ({ name, note, position }) =>
        `<Placemark>${element('name', name)}${element('description', note)}<Point>${altitudeMode([position])}<coordinates>${tuple(position)}</coordinates></Point></Placemark>`,
    ),
    ...paths.map(
      ({ name, note, positions }) =>
        `<Placemark>${element('name', name)}${element('description', note)}<LineString>${altitudeMode(positions)}<coordinates>${positions.map(tuple).join('\n')}</coordinates></LineString></Placemark>`,
    ),
    '</Document></kml>\n',
  ].join('\n')

/** The same, packed: the document is the archive's only file. Source: OGC KML 2.2, annex C. */
export async function formatKmz(places: Places, title: string): Promise<Uint8Array> {
  const { strToU8, zipSync } = await import('fflate')
  return zipSync({ 'doc.kml': strToU8(formatKml(places, title)) })
}

/** Source: RFC 7946 (2016). */
export const formatGeojson = ({ points, paths }: Places): string =>
  `${JSON.stringify(
    {
      type: 'FeatureCollection',
      features: [
        ...points.map(({ name, note, position }) => ({
          type: 'Feature',
          properties: { name, note },
          geometry: { type: 'Point', coordinates: position },
        })),
        ...paths.map(({ name, note, positions }) => ({
          type: 'Feature',
          properties: { name, note },
          geometry: { type: 'LineString', coordinates: positions },
        })),
      ],
    },
    null,
    2,
  )}\n`

/** Points a row each, and each vertex of a path a row that names its line. */
export function formatPlacesCsv({ points, paths }: Places): string {
  const row = (name: string, note: string, position: Position, line: string) => [
    name,
    degrees(position[1]),
    degrees(position[0]),
    height(position),
    note,
    line,
  ]
  const seen = new Map<string, number>()
  const own = (name: string) => {
    const count = (seen.get(name) ?? 0) + 1
    seen.set(name, count)
    return count === 1 ? name : `${name} (${count})`
  }
  return formatTableCsv({
    columns: ['name', 'latitude', 'longitude', 'elevation', 'note', 'line'].map((head) => ({ head })),
    rows: [
      ...points.map(({ name, note, position }) => row(name, note, position, '')),
      ...paths.flatMap(({ name, positions }) => {
        const line = own(name)
        return positions.map((position) => row('', '', position, line))
      }),
    ],
  })
}
