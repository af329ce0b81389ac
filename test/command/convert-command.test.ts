import { readFileSync } from 'node:fs'
import { strToU8, zipSync } from 'fflate'
import { describe, expect, test } from 'vitest'
import { runConvert } from '../../src/command/convert-command'
import { parsePlan } from '../../src/files/parse-plan'
import { legGeometry } from '../../src/geo/leg-length'
import type { Plan } from '../../src/plan/plan'
import { lineName } from '../../src/plan/plan'
import { sqliteWasm } from '../files/maps/sqlite-wasm'

async function convert(from: string, to: string, content: string | Uint8Array) {
  const printed = { out: '', err: '' }
  let written: string | Uint8Array | undefined
  const code = await runConvert([from, to], {
    readBytes: async () => (typeof content === 'string' ? new TextEncoder().encode(content) : content),
    write: async (_, each) => {
      written = each
    },
    sqliteWasm,
    out: (text) => {
      printed.out += text
    },
    err: (text) => {
      printed.err += text
    },
  })
  return { code, written, ...printed }
}

async function planFrom(name: string, content: string | Uint8Array): Promise<Plan> {
  const { code, written, err } = await convert(name, 'out.plan.geojson', content)
  expect([code, err]).toEqual([0, ''])
  const result = parsePlan(String(written))
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value
}

async function refusal(name: string, content: string | Uint8Array): Promise<string> {
  const { code, written, out, err } = await convert(name, 'out.plan.geojson', content)
  expect([code, written, out]).toEqual([2, undefined, ''])
  return err
}

const demo = readFileSync('public/demo.plan.geojson', 'utf8')
const ends = (plan: Plan) => [...plan.lines.values()].map((line) => lineName(plan, line)).sort()
const places = (plan: Plan) =>
  Object.fromEntries(
    [...plan.stations.values()].map(({ name, note, position }) => [name, { note, position }]),
  )

describe.each(['.gpx', '.kml', '.kmz', '.csv', '.geojson'])('a plan through %s and back', (ending) => {
  test('has its stations where they were, with their notes, and its lines between them', async () => {
    const before = parsePlan(demo)
    if (!before.ok) throw new Error('the demo does not read')
    const out = await convert('demo.plan.geojson', `demo${ending}`, demo)
    expect(out.code).toBe(0)
    expect(out.err).toContain('stay in the plan')
    const after = await planFrom(`demo${ending}`, out.written!)
    expect(Object.keys(places(after)).sort()).toEqual(Object.keys(places(before.value)).sort())
    for (const [name, { note, position }] of Object.entries(places(before.value))) {
      expect(places(after)[name]!.note).toBe(note)
      // Seven decimals of a degree are a centimetre.
      expect(legGeometry(places(after)[name]!.position, position).mapM).toBeLessThan(0.02)
    }
    expect(ends(after)).toEqual(ends(before.value))
    const bends = (plan: Plan) => [...plan.lines.values()].map((line) => line.bends.length).sort()
    expect(bends(after)).toEqual(bends(before.value))
  })
})

const gpx = (inner: string) =>
  `<?xml version="1.0"?><gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1">${inner}</gpx>`
const track = (...points: readonly (readonly [number, number])[]) =>
  `<trk><name>Way</name><trkseg>${points.map(([lon, lat]) => `<trkpt lat="${lat}" lon="${lon}"/>`).join('')}</trkseg></trk>`

test('the ends of a track join stations within 25 m, and make new ones beyond', async () => {
  // 0.0002° of latitude are 22 m, 0.0003° are 33 m.
  const near = await planFrom(
    'a.gpx',
    gpx(`<wpt lat="47" lon="11"><name>A</name></wpt>${track([11, 47.0002], [11, 47.01])}`),
  )
  expect(ends(near)).toEqual(['A – Way, end'])
  const far = await planFrom(
    'a.gpx',
    gpx(`<wpt lat="47" lon="11"><name>A</name></wpt>${track([11, 47.0003], [11, 47.01])}`),
  )
  expect(ends(far)).toEqual(['Way, start – Way, end'])
})

test('a track that ends where it began gets a station half way', async () => {
  const plan = await planFrom(
    'a.gpx',
    gpx(track([11, 47], [11.01, 47], [11.01, 47.01], [11, 47.01], [11, 47])),
  )
  expect(ends(plan)).toEqual(['Way, half way – Way, start', 'Way, start – Way, half way'])
})

test('two routes that share an end share its station', async () => {
  const route = (name: string, to: string) =>
    `<rte><name>${name}</name><rtept lat="47" lon="11"/><rtept lat="${to}" lon="11.02"/></rte>`
  const plan = await planFrom('a.gpx', gpx(route('one', '47.01') + route('two', '47.02')))
  expect([plan.stations.size, plan.lines.size]).toEqual([3, 2])
})

test('a table in the German manner: semicolons, decimal commas, its own words', async () => {
  const plan = await planFrom('a.csv', 'Bezeichnung;Breite;Länge;Bemerkung\r\nHütte;47,5;11,25;am Bach\r\n')
  expect(places(plan)).toEqual({ Hütte: { note: 'am Bach', position: [11.25, 47.5] } })
})

test('a table with positions as people write them', async () => {
  const plan = await planFrom('a.csv', 'name,position\nA,"47°30\'00""N 11°15\'00""E"\nB,"47.5, 11.25"\n')
  expect(places(plan).A!.position[0]).toBeCloseTo(11.25, 6)
  expect(places(plan).B!.position).toEqual([11.25, 47.5])
})

test('markup in a name is a name', async () => {
  const plan = await planFrom(
    'a.gpx',
    gpx('<wpt lat="47" lon="11"><name>&lt;script&gt;alert(1)&lt;/script&gt;</name></wpt>'),
  )
  expect(Object.keys(places(plan))).toEqual(['<script>alert(1)</script>'])
})

test('a file says its own encoding, and one that says the wrong one is refused', async () => {
  const latin = (encoding: string) =>
    Uint8Array.from(
      Buffer.from(
        `<?xml version="1.0" encoding="${encoding}"?>${gpx('<wpt lat="47" lon="11"><name>Café</name></wpt>').slice(21)}`,
        'latin1',
      ),
    )
  expect(Object.keys(places(await planFrom('a.gpx', latin('ISO-8859-1'))))).toEqual(['Café'])
  expect(await refusal('a.gpx', latin('UTF-8'))).toContain('save the file as UTF-8')
  // UTF-16, with its mark and without. XML 1.0, 5th ed., appendix F.1.
  for (const mark of ['\uFEFF', '']) {
    const utf16 = Buffer.from(`${mark}${gpx('<wpt lat="47" lon="11"><name>Café</name></wpt>')}`, 'utf16le')
    expect(Object.keys(places(await planFrom('a.gpx', utf16)))).toEqual(['Café'])
    expect(Object.keys(places(await planFrom('a.gpx', utf16.swap16())))).toEqual(['Café'])
  }
})

describe('a hostile or broken file ends in a sentence', () => {
  test.each([
    [
      'a document type',
      'a.gpx',
      `<?xml version="1.0"?><!DOCTYPE gpx [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]>${gpx('&b;').slice(21)}`,
      /document type/,
    ],
    ['half a file', 'a.gpx', gpx(track([11, 47], [12, 48])).slice(0, 150), /broken/],
    ['another language', 'a.gpx', '<html><body/></html>', /no GPX file/],
    ['a latitude of 95', 'a.gpx', gpx('<wpt lat="95" lon="11"/>'), /wpt 1 lies off the globe/],
    [
      'a position that is no number',
      'a.gpx',
      gpx('<wpt lat="north" lon="11"/>'),
      /wpt 1 has no longitude and latitude/,
    ],
    ['nothing', 'a.gpx', gpx(''), /no points and no lines/],
    ['a table without columns', 'a.csv', 'eins,zwei\n1,2\n', /first row must name the columns/],
    ['JSON that is none', 'a.geojson', '{"type":', /./],
    ['a plan of another kind', 'a.geojson', '{"a":1}', /no GeoJSON/],
    ['no archive', 'a.kmz', 'PK no', /./],
    ['elements without end', 'a.kml', `<kml>${'<Folder>'.repeat(100_000)}`, /deep|broken/],
  ])('%s', async (_, name, content, sentence) => {
    expect(await refusal(name, content)).toMatch(sentence)
  })
  test('an archive that unpacks to far more than it is', async () => {
    const bomb = zipSync({ 'doc.kml': strToU8(`<kml>${' '.repeat(60e6)}</kml>`) }, { level: 1 })
    expect(await refusal('a.kmz', bomb)).toContain('unpacks to more than can be read')
  })
  test('more points than anyone can use', async () => {
    const many = gpx(`<trk><trkseg>${'<trkpt lat="47" lon="11"/>'.repeat(260_000)}</trkseg></trk>`)
    expect(await refusal('a.gpx', many)).toContain('more than 250,000 points')
  })
  test('an ending that nobody knows', async () => {
    expect(await refusal('a.xyz', '')).toContain('its ending is none that is known')
  })
})

test('a GeoPackage becomes a plan, and nothing becomes a GeoPackage', async () => {
  const bytes = new Uint8Array(readFileSync('test/files/maps/fixtures/land.gpkg'))
  const plan = await planFrom('land.gpkg', bytes)
  expect(places(plan)['Hut two']!.position).toEqual([67.02, 48.6])
  expect(places(plan)['Hut <b>one</b>']!.note).toBe('by the beck')
  // Two roads and the ring of a lake, which is cut half way round.
  expect(plan.lines.size).toBe(4)
  expect(await refusal('land.gpkg', bytes.slice(0, 5000))).toMatch(
    /land\.gpkg: .*(broken|no GeoPackage|no database)/,
  )
  const out = await convert('demo.plan.geojson', 'demo.gpkg', demo)
  expect([out.code, out.written]).toEqual([2, undefined])
  expect(out.err).toContain('read, not written')
})
