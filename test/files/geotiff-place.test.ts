import { describe, expect, test } from 'vitest'
import { bytesFrom } from '../../src/files/byte-source'
import { readGeotiffGrid } from '../../src/files/geotiff-grid'
import type { ElevationGrid } from '../../src/terrain/elevation-grid'
import { groundFromGrids } from '../../src/terrain/ground-from-grids'
import { type WrittenImage, writtenTiff } from './written-tiff'

async function read(...images: readonly WrittenImage[]): Promise<ElevationGrid> {
  const result = await readGeotiffGrid(bytesFrom('written.tif', writtenTiff(images)))
  if (!result.ok || !result.value) throw new Error(JSON.stringify(result))
  return result.value
}

const [SCALE, TIE_POINT, GEO_KEYS, GDAL_METADATA, SUBFILE] = [33550, 33922, 34735, 42112, 254]
/** Geographic, pixels are areas, WGS 84; then keys of the vertical axis. Numbers from OGC 19-008r4, section 7. */
const keys = (...more: readonly number[]) => {
  const own = [1024, 0, 1, 2, 1025, 0, 1, 1, 2048, 0, 1, 4326, ...more]
  return { shorts: [1, 1, 0, own.length / 4, ...own] }
}
const VERTICAL_UNIT = 4099
const CELL_DEG = 0.001
/** The plane of fixtures/make.sh, which lies the same from whichever cell it is read. */
const planeOf = (columns: number, rows: number) =>
  Array.from({ length: columns * rows }, (_, i) => 300 + 2 * (i % columns) + 3 * Math.floor(i / columns))

describe('where the cells of a GeoTIFF lie', () => {
  // OGC 19-008r4, annex B.6: X = X_tie + (i − I)·scale, Y = Y_tie − (j − J)·scale, with I, J the tie point's own place on the raster.
  test.each([
    ['the corner', [0, 0, 0, 14, 46.5, 0]],
    ['a place inside', [10, 5, 0, 14.01, 46.495, 0]],
    ['a place beside it', [-4, -2, 0, 13.996, 46.502, 0]],
  ])('follows from a tie point that is %s', async (_, tiePoint) => {
    const grid = await read({
      ...{ columns: 20, rows: 12, heights: planeOf(20, 12) },
      tags: {
        [SCALE]: { doubles: [CELL_DEG, CELL_DEG, 0] },
        [TIE_POINT]: { doubles: tiePoint },
        [GEO_KEYS]: keys(),
      },
    })
    const ground = groundFromGrids([grid])
    // The middle of column 7, row 3, counted from the corner 14° E, 46.5° N.
    expect(ground.heightM(14 + 7.5 * CELL_DEG, 46.5 - 3.5 * CELL_DEG)).toBeCloseTo(300 + 14 + 9, 6)
  })

  // GDAL, Raster Data Model, "Overviews": a reduced copy covers the same ground as the whole.
  test('of a reduced copy covers the same ground as the whole', async () => {
    const [columns, rows, by] = [20_000, 12_000, 500]
    const [few, fewRows] = [columns / by, rows / by]
    // The whole is too large to read: of it there is no more than its tags.
    const whole: WrittenImage = {
      ...{ columns, rows, heights: [0] },
      tags: {
        [SCALE]: { doubles: [CELL_DEG / by, CELL_DEG / by, 0] },
        [TIE_POINT]: { doubles: [0, 0, 0, 14, 46.5, 0] },
        [GEO_KEYS]: keys(),
      },
    }
    const copy: WrittenImage = {
      ...{ columns: few, rows: fewRows, heights: planeOf(few, fewRows) },
      tags: { [SUBFILE]: { longs: [1] } },
    }
    const grid = await read(whole, copy)
    expect([grid.columns, grid.rows]).toEqual([few, fewRows])
    const ground = groundFromGrids([grid])
    expect(ground.heightM(14 + 7.5 * CELL_DEG, 46.5 - 3.5 * CELL_DEG)).toBeCloseTo(300 + 14 + 9, 6)
  })
})

describe('the unit of the heights of a GeoTIFF', () => {
  const height = async (unit: number, metadata?: string) => {
    const grid = await read({
      ...{ columns: 2, rows: 2, heights: [1000, 1000, 1000, 1000] },
      tags: {
        [SCALE]: { doubles: [CELL_DEG, CELL_DEG, 0] },
        [TIE_POINT]: { doubles: [0, 0, 0, 14, 46.5, 0] },
        [GEO_KEYS]: keys(VERTICAL_UNIT, 0, 1, unit),
        ...(metadata && { [GDAL_METADATA]: { text: metadata } }),
      },
    })
    return groundFromGrids([grid]).heightM(14 + CELL_DEG, 46.5 - CELL_DEG)
  }
  /** GDAL, GDALRasterBand::GetOffset: value · scale + offset, in the units that GetUnitType tells. */
  const SCALED =
    '<GDALMetadata><Item name="OFFSET" sample="0" role="offset">200</Item><Item name="SCALE" sample="0" role="scale">0.5</Item></GDALMetadata>'

  // EPSG units 9001, 9002 and 9003: the international foot is 0.3048 m, that of US survey 1200/3937 m. 32-bit floats hold seven digits.
  test.each([
    ['metres', 9001, 1],
    ['feet', 9002, 0.3048],
    ['US survey feet', 9003, 1200 / 3937],
  ])('%s hold for values, and for scale and offset alike', async (_, code, metres) => {
    expect(await height(code)).toBeCloseTo(1000 * metres, 3)
    expect(await height(code, SCALED)).toBeCloseTo((1000 * 0.5 + 200) * metres, 3)
  })
})
