import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { validateXML } from 'xmllint-wasm'
import { parsePlan } from '../../../src/files/parse-plan'
import { placesOfPlan } from '../../../src/files/places/places-of-plan'
import { readCsv } from '../../../src/files/places/read-csv'
import { readGeojson } from '../../../src/files/places/read-geojson'
import { readGpx } from '../../../src/files/places/read-gpx'
import { readKml } from '../../../src/files/places/read-kml'
import { formatGeojson, formatGpx, formatKml, formatPlacesCsv } from '../../../src/files/places/write-places'
import type { Places } from '../../../src/plan/places'
import { cases } from '../../cases'

// The validator is libxml2 (2.x, as xmllint-wasm packs it); the schemas say beside this file where they come from.
const schemas = {
  gpx: readFileSync('test/files/places/gpx-1-1.xsd', 'utf8'),
  kml: readFileSync('test/files/places/kml-2-2.xsd', 'utf8'),
}
/** What is wrong with each of the texts. */
const faults = async (kind: keyof typeof schemas, texts: readonly string[]) => {
  const xml = texts.map((contents, i) => ({ fileName: `${i}.xml`, contents }))
  const { errors } = await validateXML({ xml, schema: [schemas[kind]] })
  return xml.map(({ fileName }) =>
    errors
      .filter((each) => each.loc?.fileName === fileName)
      .map(({ message }) => message)
      .join(' '),
  )
}

const demo = parsePlan(readFileSync('public/demo.plan.geojson', 'utf8'))
if (!demo.ok) throw new Error('the demo does not read')

/** Names and places that a format could stumble over. */
const AWKWARD: Places = {
  points: [
    { name: 'Ford & <mill> "old" \u0000\u000b]]>', note: 'two\nlines', layer: '', position: [180, -90, 0] },
    { name: '', note: '', layer: '', position: [0.0000001, -0.0000001, -430.5] },
    { name: '  ', note: '\uFFFE😀', layer: '', position: [-180, 90] },
  ],
  paths: [
    {
      ...{ name: 'A – B', note: '', layer: '' },
      positions: [
        [179.9999999, 0, 8848.86],
        [180, 0.0000002],
      ],
    },
  ],
}

test('GPX and KML of the demo and of awkward places are as the published schemas have them', async () => {
  const all = [placesOfPlan(demo.value), AWKWARD]
  const written = (format: (places: Places, title: string) => string) =>
    all.map((each) => format(each, 'Ravel & <Moor>'))
  expect(await faults('gpx', written(formatGpx))).toEqual(['', ''])
  expect(await faults('kml', written(formatKml))).toEqual(['', ''])
})

test('the validator finds what is out of order, out of range or no decimal', async () => {
  const gpx = formatGpx(AWKWARD, '')
  const kml = formatKml(AWKWARD, '')
  const spoilt = (text: string, from: RegExp | string, to: string) => {
    expect(text.replace(from, to)).not.toBe(text)
    return text.replace(from, to)
  }
  const [order, range, power, creator, good] = await faults('gpx', [
    spoilt(gpx, /(<ele>[^<]*<\/ele>)(<name>.*?<\/name>)/s, '$2$1'),
    spoilt(gpx, 'lon="-180"', 'lon="180"'),
    spoilt(gpx, '0.0000001', '1e-7'),
    spoilt(gpx, ' creator="Fieldpair"', ''),
    gpx,
  ])
  expect(order).toContain('ele')
  expect(range).toContain('180')
  expect(power).toContain('1e-7')
  expect(creator).toContain('creator')
  expect(good).toBe('')
  const [late, exponent] = await faults('kml', [
    spoilt(kml, /(<name>A – B<\/name>)(<LineString>.*<\/LineString>)/s, '$2$1'),
    spoilt(kml, '0.0000001,', '1e-7,'),
  ])
  expect(late).toContain('name')
  expect(exponent).toContain('1e-7')
})

// Names that XML or a table changes by its own rules (ends of lines, blanks at their ends) are left out here.
const words = fc
  .string({ unit: 'grapheme', maxLength: 12 })
  .map((text) => text.replaceAll(/[\p{Cc}\p{Cn}\p{Cs}\s]+/gu, ' ').trim())
const degrees = (most: number) => fc.integer({ min: -most * 1e7, max: most * 1e7 - 1 }).map((n) => n / 1e7)
const position = fc
  .tuple(degrees(180), degrees(90), fc.option(fc.integer({ min: -43000, max: 885000 }), { nil: undefined }))
  .map(([lon, lat, cm]) => (cm === undefined ? ([lon, lat] as const) : ([lon, lat, cm / 100] as const)))
const named = words.map((text) => text || 'Ford')
const places = fc.record({
  points: fc.array(fc.record({ name: named, note: words, layer: fc.constant(''), position }), {
    minLength: 1,
    maxLength: 4,
  }),
  paths: fc.array(
    fc.record({
      ...{ name: named, note: words, layer: fc.constant('') },
      positions: fc.uniqueArray(position, {
        minLength: 2,
        maxLength: 6,
        selector: ([lon, lat]) => `${lon} ${lat}`,
      }),
    }),
    { maxLength: 3 },
  ),
})
const bytes = (text: string) => new TextEncoder().encode(text)
/** Which layer a file puts things in is the reader's word. */
const withoutLayers = (result: ReturnType<typeof readGpx>) => {
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  const bare = <T extends { readonly layer: string }>(each: T) => ({ ...each, layer: '' })
  return { points: result.value.points.map(bare), paths: result.value.paths.map(bare) }
}

test('GPX, KML and GeoJSON bring back every name, note, place and height', () => {
  fc.assert(
    fc.property(places, (before) => {
      expect(withoutLayers(readGpx(bytes(formatGpx(before, ''))))).toEqual(before)
      expect(withoutLayers(readKml(bytes(formatKml(before, ''))))).toEqual(before)
      expect(withoutLayers(readGeojson(bytes(formatGeojson(before))))).toEqual(before)
    }),
    { numRuns: cases(60) },
  )
})

test('CSV brings back every point with its note and height, and every line with its name', () => {
  fc.assert(
    fc.property(places, (before) => {
      const after = withoutLayers(readCsv(bytes(formatPlacesCsv(before))))
      expect(after.points).toEqual(before.points)
      expect(after.paths.map(({ positions }) => positions)).toEqual(
        before.paths.map(({ positions }) => positions),
      )
    }),
    { numRuns: cases(60) },
  )
})
