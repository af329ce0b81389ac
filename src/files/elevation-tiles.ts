import { WGS84_A_M } from '../geo/earth'
import type { ElevationGrid, Extent } from '../terrain/elevation-grid'
import { degToRad } from '../units'

/** A square of the web-mercator map: row 0 lies in the north, column 0 at 180° W. */
export interface TileAddress {
  readonly zoom: number
  readonly column: number
  readonly row: number
}

/** Cells on a side of a tile. */
export const TILE_CELLS = 256
/** Finer tiles only draw out what was measured at 30 m. */
const FINEST_ZOOM = 13
/** Tiles asked of a server for one plan, at most. */
const MOST_TILES = 48
/** Length of the equator on the map, m: EPSG:3857 takes it for a sphere's. */
const WORLD_M = 2 * Math.PI * WGS84_A_M

/** The tiles that cover an extent: as fine as a few dozen of them allow, row by row. */
export function tilesOver(extent: Extent): TileAddress[] {
  for (let zoom = FINEST_ZOOM; ; zoom--) {
    const across = 2 ** zoom
    const clamp = (n: number) => Math.min(Math.max(Math.floor(n), 0), across - 1)
    const columnAt = (lonDeg: number) => Math.floor(((lonDeg + 180) / 360) * across)
    const rowAt = (latDeg: number) => {
      const lat = degToRad(Math.min(Math.max(latDeg, -85), 85))
      return clamp((0.5 - Math.asinh(Math.tan(lat)) / (2 * Math.PI)) * across)
    }
    const [west, east] = [columnAt(extent.westDeg), columnAt(extent.eastDeg)]
    const [north, south] = [rowAt(extent.northDeg), rowAt(extent.southDeg)]
    if ((east - west + 1) * (south - north + 1) > MOST_TILES && zoom > 0) continue
    const tiles: TileAddress[] = []
    for (let row = north; row <= south; row++) {
      for (let column = west; column <= east; column++) tiles.push({ zoom, column, row })
    }
    return tiles
  }
}

/** The address of a tile on a server. Columns past the antimeridian are those of the other side. */
export const tileUrl = (template: string, { zoom, column, row }: TileAddress): string =>
  template
    .replace('{z}', String(zoom))
    .replace('{x}', String(((column % 2 ** zoom) + 2 ** zoom) % 2 ** zoom))
    .replace('{y}', String(row))

/**
 * Heights in the colours of a tile, m: red · 256 + green + blue / 256 − 32768; NaN where a pixel is clear.
 *
 * Source: Tilezen Joerd, docs/formats.md, "Terrarium".
 *
 * @param rgba four bytes a pixel, row by row
 */
export function heightsOfPixels(rgba: Uint8ClampedArray): Float32Array {
  const heightsM = new Float32Array(rgba.length / 4)
  for (let i = 0; i < heightsM.length; i++) {
    const at = i * 4
    heightsM[i] =
      rgba[at + 3] === 0 ? Number.NaN : rgba[at]! * 256 + rgba[at + 1]! + rgba[at + 2]! / 256 - 32768
  }
  return heightsM
}

/** One grid of the tiles of `tilesOver`, each with its heights; a tile that is missing is a void. */
export function gridOfTiles(
  name: string,
  tiles: readonly TileAddress[],
  heightsOf: (tile: TileAddress) => Float32Array | undefined,
): ElevationGrid {
  const { zoom, column: west, row: north } = tiles[0]!
  const { column: east, row: south } = tiles.at(-1)!
  const columns = (east - west + 1) * TILE_CELLS
  const rows = (south - north + 1) * TILE_CELLS
  const heights = new Float32Array(columns * rows).fill(Number.NaN)
  for (const tile of tiles) {
    const heightsM = heightsOf(tile)
    if (!heightsM) continue
    const left = (tile.column - west) * TILE_CELLS
    const top = (tile.row - north) * TILE_CELLS
    for (let row = 0; row < TILE_CELLS; row++) {
      heights.set(heightsM.subarray(row * TILE_CELLS, (row + 1) * TILE_CELLS), (top + row) * columns + left)
    }
  }
  const cellM = WORLD_M / (TILE_CELLS * 2 ** zoom)
  return {
    name,
    crs: { kind: 'web-mercator' },
    columns,
    rows,
    transform: {
      x0: (west * TILE_CELLS + 0.5) * cellM - WORLD_M / 2,
      xPerColumn: cellM,
      xPerRow: 0,
      y0: WORLD_M / 2 - (north * TILE_CELLS + 0.5) * cellM,
      yPerColumn: 0,
      yPerRow: -cellM,
    },
    heights,
  }
}
