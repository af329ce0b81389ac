import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { bytesFrom } from '../../../src/files/byte-source'
import { countOfTiles, type MapArchive, tilesOver } from '../../../src/files/maps/map-archive'
import { mbtilesArchive } from '../../../src/files/maps/mbtiles-archive'
import { pmtilesArchive } from '../../../src/files/maps/pmtiles-archive'
import { writeMbtiles } from '../../../src/files/maps/write-mbtiles'
import { promptBytes } from '../../../src/files/sqlite/prompt-file'
import { openSqlite } from '../../../src/files/sqlite/sqlite-file'
import { ALL } from '../../cases'
import { sqliteWasm } from './sqlite-wasm'
import { hilbertId, type WrittenTile, writtenPmtiles } from './written-pmtiles'

const fixture = (name: string) => new Uint8Array(readFileSync(`test/files/maps/fixtures/${name}`))

async function mbtiles(name: string, bytes: Uint8Array): Promise<MapArchive> {
  const file = await openSqlite(promptBytes(name, bytes), sqliteWasm)
  const archive = file.ok ? await mbtilesArchive(name, file.value) : file
  if (!archive.ok) throw new Error(archive.problems[0]!.message)
  return archive.value
}

// What the command line of SQLite 3.40.1 has of each tile (test/files/maps/fixtures/make.sh).
const TILES = readFileSync('test/files/maps/fixtures/tiles.txt', 'utf8')
  .trim()
  .split('\n')
  .map((line) => line.split(' '))

describe.each(['relief', 'land'])('%s.mbtiles, written by GDAL', (name) => {
  const own = TILES.filter(([map]) => map === name)

  test('gives each tile as SQLite itself has it, byte by byte', async () => {
    const file = await openSqlite(promptBytes(name, fixture(`${name}.mbtiles`)), sqliteWasm)
    if (!file.ok) throw new Error('not opened')
    expect(own.length).toBeGreaterThan(5)
    for (const [, zoom, column, row, length, hash] of own) {
      const [[bytes] = []] = file.value.rows(
        'SELECT tile_data FROM tiles WHERE zoom_level = ? AND tile_column = ? AND tile_row = ?',
        [Number(zoom), Number(column), Number(row)],
      )
      expect((bytes as Uint8Array).length).toBe(Number(length))
      expect(
        createHash('sha3-256')
          .update(bytes as Uint8Array)
          .digest('hex'),
      ).toBe(hash)
    }
  })

  test('counts rows from the north, unpacks, and weighs without reading', async () => {
    const archive = await mbtiles(name, fixture(`${name}.mbtiles`))
    expect(archive.content).toBe(name === 'land' ? 'vector' : 'picture')
    expect(archive.title).toBe(name === 'land' ? 'Land of the moor' : 'Relief of the moor')
    // GDAL's own bounds: around 67° E, 48.6° N.
    expect(archive.extent.westDeg).toBeCloseTo(66.96, 2)
    expect(archive.extent.northDeg).toBeCloseTo(48.646, 2)
    for (const [, z, column, fromSouth, length] of own) {
      const zoom = Number(z)
      const place = { zoom, column: Number(column), row: 2 ** zoom - 1 - Number(fromSouth) }
      expect(await archive.tileBytes(place)).toBe(Number(length))
      // A tile lies where its place says: over the extent.
      expect([...tilesOver(archive.extent, zoom)]).toContainEqual(place)
      expect((await archive.tile(place))!.length).toBeGreaterThan(0)
    }
    expect(await archive.tile({ zoom: 12, column: 0, row: 0 })).toBeUndefined()
  })
})

async function tilesOf(archive: MapArchive): Promise<WrittenTile[]> {
  const tiles: WrittenTile[] = []
  for (let zoom = archive.minZoom; zoom <= archive.maxZoom; zoom++)
    for (const place of tilesOver(archive.extent, zoom)) {
      const bytes = await archive.tile(place)
      if (bytes) tiles.push({ ...place, bytes })
    }
  return tiles
}

describe('PMTiles', () => {
  // The table of the specification, version 3, section 2.
  test('are ordered as the specification orders them', () => {
    const of = (zoom: number, column: number, row: number) => hilbertId({ zoom, column, row })
    expect([of(0, 0, 0), of(1, 0, 0), of(1, 0, 1), of(1, 1, 1), of(1, 1, 0), of(2, 0, 0)]).toEqual([
      0, 1, 2, 3, 4, 5,
    ])
    expect(of(12, 3423, 1763)).toBe(19_078_479)
  })

  test.each([
    ['relief', undefined],
    ['relief', 3],
    ['land', undefined],
    ['land', 4],
  ] as const)('of %s (leaves of %s) hold the tiles that went in', async (name, leaf) => {
    const source = await mbtiles(name, fixture(`${name}.mbtiles`))
    const tiles = await tilesOf(source)
    const { westDeg, southDeg, eastDeg, northDeg } = source.extent
    const bytes = writtenPmtiles({
      ...{ tiles, type: name === 'land' ? 1 : 2, areTilesPacked: name === 'land', leaf: leaf as number },
      metadata: { name: 'Moor', attribution: '<a href="x">© Nobody</a>' },
      bounds: [westDeg, southDeg, eastDeg, northDeg],
    })
    const result = await pmtilesArchive(bytesFrom('moor.pmtiles', bytes))
    if (!result.ok) throw new Error(result.problems[0]!.message)
    const archive = result.value
    expect(archive).toMatchObject({ content: source.content, title: 'Moor', credit: '© Nobody' })
    expect([archive.minZoom, archive.maxZoom]).toEqual([source.minZoom, source.maxZoom])
    expect(archive.extent.westDeg).toBeCloseTo(westDeg, 6)
    for (const { bytes: tile, ...place } of tiles) {
      expect(await archive.tile(place)).toEqual(tile)
      const length = await archive.tileBytes(place)
      if (name === 'relief') expect(length).toBe(tile.length)
      else expect(length).toBeGreaterThan(0)
    }
    expect(await archive.tile({ zoom: 11, column: 0, row: 0 })).toBeUndefined()
    expect(await archive.tileBytes({ zoom: 11, column: 0, row: 0 })).toBe(0)
  })
})

test('a part of an archive is an archive, of that part alone', async () => {
  for (const name of ['land', 'relief']) {
    const whole = await mbtiles(name, fixture(`${name}.mbtiles`))
    const { westDeg, southDeg, eastDeg } = whole.extent
    const extent = { westDeg, southDeg, eastDeg: (westDeg + eastDeg) / 2, northDeg: southDeg + 0.02 }
    const blob = await writeMbtiles(whole, extent, whole.maxZoom - 1, sqliteWasm, () => undefined)
    const bytes = new Uint8Array(await blob.arrayBuffer())
    const part = await mbtiles('part', bytes)
    expect([part.content, part.minZoom, part.maxZoom]).toEqual([
      whole.content,
      whole.minZoom,
      whole.maxZoom - 1,
    ])
    let [there, count] = [0, 0]
    for (let zoom = part.minZoom; zoom <= part.maxZoom; zoom++) {
      count += countOfTiles(extent, zoom)
      for (const place of tilesOver(extent, zoom)) {
        expect(await part.tile(place)).toEqual(await whole.tile(place))
        there++
      }
    }
    expect(there).toBe(count)
    expect((await tilesOf({ ...part, extent: whole.extent })).length).toBeLessThan(
      (await tilesOf(whole)).length,
    )
  }
})

describe('what is no map', () => {
  const refusalOf = async (bytes: Uint8Array<ArrayBuffer>) => {
    const file = await openSqlite(promptBytes('x', bytes), sqliteWasm)
    const result = file.ok ? await mbtilesArchive('x', file.value) : file
    return result.ok ? 'none' : result.problems[0]!.message
  }
  test('a database cut short or spoiled ends in a sentence, or gives no tile', async () => {
    const whole = fixture('land.mbtiles')
    expect(await refusalOf(whole.slice(0, 50))).toMatch(/no database|broken/)
    expect(await refusalOf(new TextEncoder().encode('SQLite format 3'))).toMatch(/no database/)
    for (let at = 0; at < whole.length; at += ALL ? 911 : 3 * 911) {
      const spoiled = whole.slice()
      spoiled.fill(0xff, at, at + 40)
      expect(await refusalOf(spoiled)).toMatch(/^none$|\S+ \S+ \S+/)
    }
  })

  test('PMTiles cut short, spoiled or of another kind end in a sentence', async () => {
    const bytes = writtenPmtiles({
      tiles: [{ zoom: 0, column: 0, row: 0, bytes: fixture('scan.jpg') }],
      type: 2,
    })
    const refusal = async (of: Uint8Array<ArrayBuffer>) => {
      const result = await pmtilesArchive(bytesFrom('x.pmtiles', of))
      return result.ok ? 'none' : result.problems[0]!.message
    }
    expect(await refusal(bytes.slice(0, 60))).toMatch(/no PMTiles|broken/)
    const kind = bytes.slice()
    kind[99] = 77
    expect(await refusal(kind)).toMatch(/kind that is not read/)
    const zooms = bytes.slice()
    zooms[101] = 200
    expect(await refusal(zooms)).toMatch(/absurd/)
    for (let at = 8; at < 96; at += 8) {
      const spoiled = bytes.slice()
      spoiled.fill(0xff, at, at + 7)
      expect(await refusal(spoiled)).toMatch(/^none$|\S+ \S+ \S+/)
    }
  })

  test('a directory that unpacks without end stops at its bound', async () => {
    const bytes = writtenPmtiles({
      tiles: [{ zoom: 0, column: 0, row: 0, bytes: new Uint8Array(8) }],
      type: 2,
    })
    const { gzipSync } = await import('node:zlib')
    const bomb = gzipSync(Buffer.alloc(200e6), { level: 1 })
    const made = Buffer.concat([bytes, bomb])
    made.writeBigUInt64LE(BigInt(bytes.length), 8)
    made.writeBigUInt64LE(BigInt(bomb.length), 16)
    const startMs = performance.now()
    const result = await pmtilesArchive(bytesFrom('x.pmtiles', new Uint8Array(made)))
    expect(result.ok).toBe(false)
    expect(performance.now() - startMs).toBeLessThan(4000)
  })

  test('a view that counts for ever is ended', async () => {
    const { sqliteOf } = await import('../../../src/files/sqlite/sqlite-library')
    const { oo1, capi } = await sqliteOf(sqliteWasm)
    const made = new oo1.DB(':memory:', 'c')
    made.exec(`CREATE TABLE metadata (name text, value text);
      CREATE VIEW tiles AS WITH RECURSIVE n(i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n)
        SELECT i AS zoom_level, 0 AS tile_column, 0 AS tile_row, x'00' AS tile_data FROM n`)
    const bytes = new Uint8Array(capi.sqlite3_js_db_export(made))
    made.close()
    const file = await openSqlite(promptBytes('x', bytes), sqliteWasm)
    if (!file.ok) throw new Error('not opened')
    const startMs = performance.now()
    expect(() => file.value.rows('SELECT count(*) FROM tiles', [], 300)).toThrow()
    expect(performance.now() - startMs).toBeLessThan(2000)
    expect(() => file.value.rows('DELETE FROM metadata')).toThrow()
  })
})
