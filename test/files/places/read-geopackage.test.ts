import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { readGeopackage } from '../../../src/files/places/read-geopackage'
import { readWkb } from '../../../src/files/places/read-wkb'
import { promptBytes } from '../../../src/files/sqlite/prompt-file'
import { openSqlite } from '../../../src/files/sqlite/sqlite-file'
import { sqliteWasm } from '../maps/sqlite-wasm'

const bytes = () => new Uint8Array(readFileSync('test/files/maps/fixtures/land.gpkg'))

async function read(of: Uint8Array) {
  const file = await openSqlite(promptBytes('land.gpkg', of), sqliteWasm)
  return file.ok ? readGeopackage(file.value) : file
}

/** What GDAL reads of a layer: test/files/maps/fixtures/make.sh. */
const layer = (
  name: string,
): readonly { properties: Record<string, string>; geometry: { coordinates: unknown } }[] =>
  JSON.parse(readFileSync(`test/files/maps/fixtures/land-${name}.geojson`, 'utf8')).features

describe('a GeoPackage that GDAL wrote', () => {
  test('holds its points, with names, notes and heights', async () => {
    const result = await read(bytes())
    const { points } = result.ok ? result.value : { points: [] }
    expect(points.map(({ name, note, layer: of }) => [name, note, of])).toEqual([
      ['Hut <b>one</b>', 'by the beck', 'huts'],
      ['Hut two', '', 'huts'],
    ])
    for (const [i, { geometry }] of layer('huts').entries())
      expect(points[i]!.position.slice(0, 2)).toEqual((geometry.coordinates as number[]).slice(0, 2))
    expect(points[0]!.position[2]).toBe(512.5)
  })

  test.each([
    // EPSG:28412: PROJ takes another shift for this place than the table has for the whole zone, good to 3 m, some 4e-5°.
    ['roads', 5e-5, (coordinates: unknown) => coordinates],
    // EPSG:3857, no shift; written to 9 digits.
    ['lakes', 1e-8, (coordinates: unknown) => (coordinates as unknown[][][])[0]![0]],
  ])('holds its %s where GDAL has them, whatever system they lie in', async (name, withinDeg, outline) => {
    const result = await read(bytes())
    const paths = (result.ok ? result.value.paths : []).filter((each) => each.layer === name)
    const theirs = layer(name)
    expect(paths.length).toBe(theirs.length)
    for (const [i, { geometry }] of theirs.entries()) {
      const corners = outline(geometry.coordinates) as number[][]
      expect(paths[i]!.positions.length).toBe(corners.length)
      for (const [k, [lonDeg, latDeg]] of corners.entries()) {
        expect(Math.abs(paths[i]!.positions[k]![0] - lonDeg!)).toBeLessThan(withinDeg)
        expect(Math.abs(paths[i]!.positions[k]![1] - latDeg!)).toBeLessThan(withinDeg)
      }
    }
  })
})

describe('what is no GeoPackage, or a broken one', () => {
  const messageOf = async (of: Uint8Array) => {
    const result = await read(of)
    return result.ok ? 'none' : result.problems[0]!.message
  }
  test('ends in a sentence', async () => {
    expect(await messageOf(new TextEncoder().encode('no database at all'))).toMatch(/no database/)
    const map = new Uint8Array(readFileSync('test/files/maps/fixtures/land.mbtiles'))
    expect(await messageOf(map)).toMatch(/no GeoPackage/)
    const whole = bytes()
    for (let at = 0; at < whole.length; at += 4099) {
      const spoiled = whole.slice()
      spoiled.fill(0xff, at, at + 64)
      expect(await messageOf(spoiled)).toMatch(/^none$|\S+ \S+ \S+/)
    }
  })

  test('a shape that claims more than it has is none', () => {
    const line = (count: number, corners: number) => {
      const view = new DataView(new ArrayBuffer(9 + 16 * corners))
      view.setUint8(0, 1)
      view.setUint32(1, 2, true)
      view.setUint32(5, count, true)
      return new Uint8Array(view.buffer)
    }
    expect(readWkb(line(2, 2))).toHaveLength(1)
    expect(readWkb(line(4_000_000_000, 2))).toBeUndefined()
    expect(readWkb(line(3, 2))).toBeUndefined()
    expect(readWkb(new Uint8Array(3))).toBeUndefined()
    // A collection of collections of collections …
    const nested = new Uint8Array(9 * 20)
    for (let i = 0; i < 20; i++) nested.set([1, 7, 0, 0, 0, 1, 0, 0, 0], 9 * i)
    expect(readWkb(nested)).toBeUndefined()
  })
})
