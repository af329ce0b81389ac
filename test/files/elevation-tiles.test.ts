import { describe, expect, test } from 'vitest'
import { gridOfTiles, heightsOfPixels, TILE_CELLS, tilesOver, tileUrl } from '../../src/files/elevation-tiles'
import { groundFromGrids } from '../../src/terrain/ground-from-grids'

test('colours are heights as the format says', () => {
  // Tilezen Joerd, docs/formats.md: red · 256 + green + blue / 256 − 32768, so 0 m is (128, 0, 0).
  const pixels = [...[128, 0, 0, 255], ...[128, 100, 128, 255], ...[127, 246, 0, 255], ...[0, 0, 0, 0]]
  expect([...heightsOfPixels(new Uint8ClampedArray(pixels))]).toEqual([0, 100.5, -10, Number.NaN])
})

describe('the tiles over an extent', () => {
  test('are those of the map’s own numbering', () => {
    // OpenStreetMap wiki, "Slippy map tilenames": at zoom z the column is (lon + 180) / 360 · 2^z.
    const [tile, ...others] = tilesOver({ westDeg: 0.001, eastDeg: 0.002, southDeg: 0.001, northDeg: 0.002 })
    expect(others).toEqual([])
    expect(tile).toEqual({ zoom: 13, column: 4096, row: 4095 })
    expect(tileUrl('https://example.org/{z}/{x}/{y}.png', tile!)).toBe('https://example.org/13/4096/4095.png')
  })

  test('grow coarser as it grows, and are never more than a few dozen', () => {
    const wide = tilesOver({ westDeg: -20, eastDeg: 20, southDeg: -20, northDeg: 20 })
    expect(wide.length).toBeLessThanOrEqual(48)
    expect(wide[0]!.zoom).toBeLessThan(7)
    expect(
      tilesOver({ westDeg: -180, eastDeg: 180, southDeg: -90, northDeg: 90 }).length,
    ).toBeLessThanOrEqual(48)
  })

  test('go on across the antimeridian', () => {
    const tiles = tilesOver({ westDeg: 179.98, eastDeg: 180.02, southDeg: 0.001, northDeg: 0.002 })
    expect(tiles.map((tile) => tileUrl('{z}/{x}/{y}', tile))).toEqual(['13/8191/4095', '13/0/4095'])
  })
})

test('tiles side by side are one ground, and a missing one is a void', () => {
  const extent = { westDeg: 14, eastDeg: 14.05, southDeg: 46.5, northDeg: 46.51 }
  const tiles = tilesOver(extent)
  const ground = groundFromGrids([
    gridOfTiles('made', tiles, (tile) =>
      tile.column === tiles.at(-1)!.column ? undefined : new Float32Array(TILE_CELLS ** 2).fill(tile.column),
    ),
  ])
  const columnAt = (lonDeg: number) => Math.floor(((lonDeg + 180) / 360) * 2 ** 13)
  expect(ground.heightM(14.001, 46.505)).toBe(columnAt(14.001))
  expect(ground.heightM(14.049, 46.505)).toBeUndefined()
})

test('the cells of a tile lie inside it: half a cell in from its edges, which for the whole world are 180° W and E', () => {
  const { transform, columns, rows } = gridOfTiles('world', [{ zoom: 0, column: 0, row: 0 }], () => undefined)
  // EPSG:3857 is square about 0, 0 with a half side of π · 6378137 m.
  const halfM = Math.PI * 6378137
  expect(transform.x0 - transform.xPerColumn / 2).toBeCloseTo(-halfM, 3)
  expect(transform.x0 + transform.xPerColumn * (columns - 0.5)).toBeCloseTo(halfM, 3)
  expect(transform.y0 - transform.yPerRow / 2).toBeCloseTo(halfM, 3)
  expect(transform.y0 + transform.yPerRow * (rows - 0.5)).toBeCloseTo(-halfM, 3)
})

test('of two tiles one above the other the northern one sets where the grid begins', () => {
  const column = [0, 1].map((row) => ({ zoom: 1, column: 0, row }))
  const { transform, rows } = gridOfTiles('west', column, () => undefined)
  const halfM = Math.PI * 6378137
  expect(transform.y0 - transform.yPerRow / 2).toBeCloseTo(halfM, 3)
  expect(transform.y0 + transform.yPerRow * (rows - 0.5)).toBeCloseTo(-halfM, 3)
})
