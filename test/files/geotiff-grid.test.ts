import { readFileSync } from 'node:fs'
import { deflateSync } from 'node:zlib'
import { describe, expect, test } from 'vitest'
import { BlockTooLong } from '../../src/files/bounded-bytes'
import { bytesFrom } from '../../src/files/byte-source'
import { groundFromFiles } from '../../src/files/elevation-files'
import { crsOf } from '../../src/files/geotiff-crs'
import { readGeotiffGrid } from '../../src/files/geotiff-grid'
import { unpackLzw, unpackPackBits } from '../../src/files/tiff-decoders'
import type { ElevationGrid } from '../../src/terrain/elevation-grid'
import { groundFromGrids } from '../../src/terrain/ground-from-grids'
import { todaysCases } from '../cases'

// Written by GDAL 3.6.2 from one plane: 300 + 2·column + 3·row over 60 × 40 cells (test/terrain/fixtures/make.sh).
const fixture = (name: string) =>
  bytesFrom(name, new Uint8Array(readFileSync(`test/terrain/fixtures/${name}`)))

async function gridOf(name: string): Promise<ElevationGrid> {
  const result = await readGeotiffGrid(fixture(name))
  if (!result.ok || !result.value) throw new Error(JSON.stringify(result))
  return result.value
}

const faultOf = async (bytes: Uint8Array<ArrayBuffer>) => {
  const result = await readGeotiffGrid(bytesFrom('x.tif', bytes))
  return result.ok ? 'none' : result.problems[0]!.message
}

describe('a GeoTIFF in longitude and latitude', () => {
  const LAYOUTS = [
    'int16-strips',
    'int16-tiles-lzw',
    'float32-tiles-deflate',
    'uint32-packbits',
    'float64-deflate',
    'uint16-big-endian-lzw',
    'int32-bigtiff-deflate',
    'int16-points',
    'big-endian-differences',
    'big-endian-differences-32',
    'lerc',
    'lerc-zstd',
    'zstd',
    'zstd-differences',
  ]
  test.each(LAYOUTS)('%s holds the heights that GDAL put into it, where it put them', async (name) => {
    const grid = await gridOf(`${name}.tif`)
    expect([grid.columns, grid.rows]).toEqual([60, 40])
    for (let row = 0; row < 40; row++) {
      for (let column = 0; column < 60; column++) {
        expect(grid.heights[row * 60 + column]).toBe(300 + 2 * column + 3 * row)
      }
    }
    // Half a cell in from the corner 14° E, 46.52° N, and 0.0005° a cell; a point is as far in as an area's centre.
    const ground = groundFromGrids([grid])
    expect(ground.heightM(14 + 0.0005 * 10.5, 46.52 - 0.0005 * 20.5)).toBeCloseTo(300 + 20 + 60, 6)
    expect(ground.heightM(14 + 0.0005 * 11, 46.52 - 0.0005 * 20.5)).toBeCloseTo(300 + 21 + 60, 6)
  })

  test('keeps decimetres with a scale and an offset as metres', async () => {
    const grid = await gridOf('int16-scaled.tif')
    expect(grid.heights[61]).toBeCloseTo((300 + 2 + 3) * 0.1 + 5, 4)
  })

  test.each(['float32-void', 'int16-void', 'lerc-deflate-void'])(
    '%s is not known in its void, and known beside it',
    async (name) => {
      const ground = groundFromGrids([await gridOf(`${name}.tif`)])
      expect(ground.heightM(14 + 0.0005 * 22, 46.52 - 0.0005 * 12)).toBeUndefined()
      expect(ground.heightM(14 + 0.0005 * 19.2, 46.52 - 0.0005 * 12)).toBeCloseTo(
        300 + 2 * 18.7 + 3 * 11.5,
        4,
      )
    },
  )

  test('is read only where the plan lies', async () => {
    const extent = { westDeg: 14.01, eastDeg: 14.012, southDeg: 46.505, northDeg: 46.507 }
    const result = await readGeotiffGrid(fixture('int16-tiles-lzw.tif'), extent)
    const grid = result.ok && result.value ? result.value : undefined
    expect(grid!.columns * grid!.rows).toBeLessThan(120)
    expect(groundFromGrids([grid!]).heightM(14.011, 46.506)).toBeCloseTo(300 + 2 * 21.5 + 3 * 27.5, 6)
    const elsewhere = await readGeotiffGrid(fixture('int16-tiles-lzw.tif'), {
      ...extent,
      westDeg: 15,
      eastDeg: 15.1,
    })
    expect(elsewhere).toEqual({ ok: true, value: null })
  })
})

describe('a GeoTIFF in a projection', () => {
  // Longitudes and latitudes by gdaltransform (GDAL 3.6.2) of the x and y beside them.
  const PLACES = [
    { name: 'utm33-north', lonDeg: 13.7084447278676, latDeg: 46.5016769874651, x: 400900, y: 5150600 },
    { name: 'utm33-north', lonDeg: 13.712862288208, latDeg: 46.4992181333757, x: 401234.5, y: 5150321.25 },
    { name: 'utm33-south', lonDeg: 13.7682593977533, latDeg: -43.7910241152785, x: 400900, y: 5150600 },
    { name: 'utm33-south', lonDeg: 13.772364674595, latDeg: -43.7935780860552, x: 401234.5, y: 5150321.25 },
  ]
  test.each(PLACES)('$name is sampled at $x, $y', async ({ name, lonDeg, latDeg, x, y }) => {
    const ground = groundFromGrids([await gridOf(`${name}.tif`)])
    const planeM = 300 + 2 * ((x - 400000) / 30 - 0.5) + 3 * ((5151200 - y) / 30 - 0.5)
    expect(ground.heightM(lonDeg, latDeg)).toBeCloseTo(planeM, 3)
  })

  test.each([
    { lonDeg: 14.0002437030027, latDeg: 46.4972802019923, x: 1558500, y: 5860400 },
    { lonDeg: 14.0057324093887, latDeg: 46.4996114837009, x: 1559111, y: 5860777 },
  ])('web mercator is sampled at $x, $y', async ({ lonDeg, latDeg, x, y }) => {
    const ground = groundFromGrids([await gridOf('web-mercator.tif')])
    const planeM = 300 + 2 * ((x - 1558000) / 25 - 0.5) + 3 * ((5861000 - y) / 25 - 0.5)
    expect(ground.heightM(lonDeg, latDeg)).toBeCloseTo(planeM, 3)
  })

  test('may be turned: a 4 × 4 matrix stands in for tie point and scale', async () => {
    const ground = groundFromGrids([await gridOf('utm33-turned.tif')])
    // x = 400000 + 24 c + 18 r and y = 5150000 + 18 c − 24 r, from the corner: c = 10, r = 15 is this place.
    // gdaltransform of 400510, 5149820 from EPSG:32633.
    expect(ground.heightM(13.7035300734493, 46.4946016332326)).toBeCloseTo(300 + 2 * 9.5 + 3 * 14.5, 2)
  })
})

test('hills in UTM have, place by place, the heights that gdalwarp finds between their cells', async () => {
  const ground = groundFromGrids([await gridOf('hills.tif')])
  const warped = await gridOf('hills-warped.tif')
  const { x0, xPerColumn, y0, yPerRow } = warped.transform
  let compared = 0
  for (let row = 0; row < warped.rows; row++) {
    for (let column = 0; column < warped.columns; column++) {
      const theirs = warped.heights[row * warped.columns + column]!
      const ours = ground.heightM(x0 + xPerColumn * column, y0 + yPerRow * row)
      if (Number.isNaN(theirs) || ours === undefined) continue
      // Both are 32-bit floats of some 500 m.
      expect(Math.abs(ours - theirs)).toBeLessThan(1e-3)
      compared++
    }
  }
  expect(compared).toBeGreaterThan(2000)
})

describe('what is no grid of heights', () => {
  test.each([
    ['no-place.tif', /does not say where on the globe/],
    ['picture.tif', /is a picture/],
  ])('%s ends in a sentence', async (name, sentence) => {
    const result = await readGeotiffGrid(fixture(name))
    expect(result.ok ? '' : result.problems[0]!.message).toMatch(sentence)
  })

  test('a text file is no TIFF', async () => {
    expect(await faultOf(new TextEncoder().encode('II but then just words'))).toMatch(/not a TIFF/)
    expect(await faultOf(new Uint8Array(0))).toMatch(/not a TIFF/)
  })

  test.each([
    'int16-strips',
    'int16-tiles-lzw',
    'float32-tiles-deflate',
    'lerc-deflate-void',
    'zstd',
    'jpeg',
  ])('%s cut short anywhere ends in a sentence, or is whole where only padding went', async (name) => {
    const whole = new Uint8Array(readFileSync(`test/terrain/fixtures/${name}.tif`))
    for (let length = 0; length < whole.length; length += 37) {
      expect(await faultOf(whole.slice(0, length))).toMatch(/cut short|not a TIFF|broken|none/)
    }
  })

  test.each(['int16-tiles-lzw', 'float32-tiles-deflate', 'utm33-turned'])(
    '%s with any byte of it spoilt is read, or ends in a sentence, soon',
    async (name) => {
      const whole = new Uint8Array(readFileSync(`test/terrain/fixtures/${name}.tif`))
      for (const third of todaysCases(whole.length / 3, 10)) {
        const at = 3 * third
        const spoilt = whole.slice()
        spoilt[at] = spoilt[at]! ^ 0xff
        const result = await readGeotiffGrid(bytesFrom('x.tif', spoilt))
        if (result.ok) continue
        expect(result.problems[0]!.message).toMatch(/^The file .+\.$/)
      }
    },
    60_000,
  )

  test('a billion columns by a billion rows are refused before memory is asked for', async () => {
    const bytes = new Uint8Array(readFileSync('test/terrain/fixtures/int16-strips.tif'))
    const view = new DataView(bytes.buffer)
    const place = view.getUint32(4, true)
    for (let i = 0; i < view.getUint16(place, true); i++) {
      const at = place + 2 + i * 12
      const tag = view.getUint16(at, true)
      if (tag !== 256 && tag !== 257) continue
      view.setUint16(at + 2, 4, true)
      view.setUint32(at + 8, 1_000_000_000, true)
    }
    expect(await faultOf(bytes)).toMatch(/too many cells \(1,000,000,000,000,000,000\)/)
  })
})

describe('a file that lies about itself', () => {
  /** Each entry of a little-endian TIFF's first directory: its tag, and where in the file it stands. */
  const entriesOf = (view: DataView) => {
    const place = view.getUint32(4, true)
    return Array.from({ length: view.getUint16(place, true) }, (_, i) => place + 2 + i * 12)
  }
  const spoil = (name: string, change: (view: DataView, tag: number, at: number) => void) => {
    const bytes = new Uint8Array(readFileSync(`test/terrain/fixtures/${name}.tif`))
    const view = new DataView(bytes.buffer)
    for (const at of entriesOf(view)) change(view, view.getUint16(at, true), at)
    return bytes
  }

  test('with a directory that leads back to itself is refused', async () => {
    const bytes = new Uint8Array(readFileSync('test/terrain/fixtures/int16-strips.tif'))
    const view = new DataView(bytes.buffer)
    view.setUint32(entriesOf(view).at(-1)! + 12, view.getUint32(4, true), true)
    expect(await faultOf(bytes)).toMatch(/run in a circle/)
  })

  test('with more to unpack than is read at once is refused before it is unpacked', async () => {
    const bytes = spoil('int16-strips', (view, tag, at) => {
      if (tag !== 256 && tag !== 257) return
      view.setUint16(at + 2, 4, true)
      view.setUint32(at + 8, 20_000, true)
    })
    expect(await faultOf(bytes)).toMatch(
      /unpacks to [\d,]+ MB where it is needed, and 512 MB are read at most/,
    )
  })

  test('with tiles that lie on each other is refused', async () => {
    const bytes = spoil('int16-tiles-lzw', (view, tag, at) => {
      if (tag !== 325) return
      const [count, size] = [view.getUint32(at + 4, true), view.getUint16(at + 2, true) === 3 ? 2 : 4]
      const place = view.getUint32(at + 8, true)
      for (let i = 0; i < count; i++) {
        if (size === 2) view.setUint16(place + 2 * i, view.byteLength - 1, true)
        else view.setUint32(place + 4 * i, view.byteLength - 1, true)
      }
    })
    expect(await faultOf(bytes)).toMatch(/longer together than the file is/)
  })

  test('with no code for its system is told in words', async () => {
    expect(await crsOf({ GTModelTypeGeoKey: 2 })).toBe('lies in a geographic system of its own making')
    expect(await crsOf({ GTModelTypeGeoKey: 2, GeographicTypeGeoKey: 32767 })).not.toContain('EPSG')
    expect(await crsOf({ GTModelTypeGeoKey: 1 })).not.toContain('EPSG')
  })

  test('with a table longer than the file is refused', async () => {
    const bytes = spoil('int16-tiles-lzw', (view, tag, at) => {
      if (tag === 324) view.setUint32(at + 4, 900_000_000, true)
    })
    expect(await faultOf(bytes)).toMatch(/cut short/)
  })

  test('with tiles of a billion cells is refused', async () => {
    const bytes = spoil('int16-tiles-lzw', (view, tag, at) => {
      if (tag !== 322 && tag !== 323) return
      view.setUint16(at + 2, 4, true)
      view.setUint32(at + 8, 32_768, true)
    })
    expect(await faultOf(bytes)).toMatch(/pieces too large/)
  })

  // 64 MB of zeros in 64 KB, where a strip of 60 × 40 cells should be.
  test('with a strip that unpacks a thousandfold is stopped at the length it should have', async () => {
    const bomb = deflateSync(new Uint8Array(64 * 2 ** 20), { level: 9 })
    const fixture = readFileSync('test/terrain/fixtures/int16-one-strip.tif')
    const bytes = new Uint8Array(fixture.length + bomb.length)
    bytes.set(fixture)
    bytes.set(bomb, fixture.length)
    const view = new DataView(bytes.buffer)
    for (const at of entriesOf(view)) {
      if (view.getUint16(at, true) === 273) view.setUint32(at + 8, fixture.length, true)
      if (view.getUint16(at, true) === 279) {
        view.setUint16(at + 2, 4, true)
        view.setUint32(at + 8, bomb.length, true)
      }
    }
    expect(await faultOf(bytes)).toMatch(/unpacks to more than it should/)
  })

  test('with LZW that repeats for ever is stopped too', () => {
    // Clear, 0, then each code the one just made: strings one longer each time.
    const codes = [256, 0, ...Array.from({ length: 3800 }, (_, i) => 258 + i)]
    expect(() => unpackLzw(packCodes(codes), 4800)).toThrow(BlockTooLong)
    expect(unpackLzw(packCodes([256, 65, 66, 258, 257]), 4800)).toEqual(new Uint8Array([65, 66, 65, 66]))
    expect(() => unpackLzw(packCodes([256, 65, 300]), 4800)).toThrow(RangeError)
  })

  test('with PackBits that run over is stopped', () => {
    // TIFF 6.0 (Adobe 1992), section 9: 254 (−2) repeats the next byte three times, 2 copies the next three, 128 is nothing.
    const packed = new Uint8Array([254, 0xaa, 2, 0x80, 0x00, 0x2a, 128, 253, 0xaa])
    const unpacked = [0xaa, 0xaa, 0xaa, 0x80, 0x00, 0x2a, 0xaa, 0xaa, 0xaa, 0xaa]
    expect([...unpackPackBits(packed, 10)]).toEqual(unpacked)
    expect(() => unpackPackBits(packed, 9)).toThrow(BlockTooLong)
  })
})

/** LZW codes as a TIFF has them: most significant bit first, a code wider one code early. */
function packCodes(codes: readonly number[]): Uint8Array {
  let bits = ''
  let width = 9
  let next = 257
  for (const code of codes) {
    bits += code.toString(2).padStart(width, '0')
    if (code === 256) [width, next] = [9, 257]
    else next++
    if (next + 1 >= 1 << width && width < 12) width++
  }
  return Uint8Array.from(bits.match(/.{1,8}/g) ?? [], (byte) => Number.parseInt(byte.padEnd(8, '0'), 2))
}

test('files together are one ground, and each fault among them is told', async () => {
  const both = await groundFromFiles([fixture('int16-void.tif'), fixture('float64-deflate.tif')])
  const inVoidM = both.ok ? both.value.heightM(14 + 0.0005 * 22.5, 46.52 - 0.0005 * 12.5) : undefined
  expect(inVoidM).toBeCloseTo(300 + 44 + 36, 6)
  const faults = await groundFromFiles([
    fixture('picture.tif'),
    fixture('no-place.tif'),
    fixture('int16-void.tif'),
  ])
  expect(faults.ok ? [] : faults.problems.map((p) => p.at)).toEqual(['picture.tif', 'no-place.tif'])
})

test('a reading that is stopped rejects, and reports how far it came', async () => {
  const done: number[] = []
  await readGeotiffGrid(fixture('int16-strips.tif'), undefined, { onProgress: (part) => done.push(part) })
  expect(done.at(-1)).toBe(1)
  await expect(
    readGeotiffGrid(fixture('int16-strips.tif'), undefined, { signal: AbortSignal.abort() }),
  ).rejects.toThrow()
})
