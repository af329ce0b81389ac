import {
  gridOfTiles,
  heightsOfPixels,
  TILE_CELLS,
  type TileAddress,
  tilesOver,
  tileUrl,
} from '../files/elevation-tiles'
import type { Watch } from '../jobs/terrain-jobs'
import type { Plan } from '../plan/plan'
import { bad, ok, type Result } from '../problem'
import type { ElevationGrid, Extent } from '../terrain/elevation-grid'
import type { GridSource } from './grid-source'

/** A server of elevation tiles as the person names it, and the credit that its owner asks for. */
export interface ElevationServer {
  readonly url: string
  readonly credit: string
}

/** Requests under way at a time: more is unkind to a free server. */
const AT_ONCE = 4

/** What a request for one tile came to; undefined where the server has none there. Rejects where it does not answer. */
export type FetchTile = (url: string, signal: AbortSignal | undefined) => Promise<TilePixels | undefined>

export interface TilePixels {
  readonly rgba: Uint8ClampedArray
  readonly sizeBytes: number
}

/**
 * Heights from a tile server, for the plan's own stretch of country and no more. Only the page that a person has let go online
 * may ask; whoever calls this has asked them.
 */
export function onlineGround(
  server: ElevationServer,
  fetchTile: FetchTile = fetchPixels,
): (plan: Plan) => Promise<readonly GridSource[]> {
  let sizeBytes = 0
  const source: GridSource = {
    key: 'online',
    name: `Elevations online, ${server.credit}`,
    isKept: false,
    sizeBytes: () => sizeBytes,
    read: async (extent, watch) => {
      if (!extent) return ok(null)
      const result = await readTiles(server, extent, watch, fetchTile)
      if (!result.ok) return result
      sizeBytes = result.value.sizeBytes
      return ok(result.value.grid)
    },
  }
  return async (plan) => (plan.stations.size > 0 ? [source] : [])
}

async function readTiles(
  server: ElevationServer,
  extent: Extent,
  { signal, onProgress }: Watch,
  fetchTile: FetchTile,
): Promise<Result<{ grid: ElevationGrid | null; sizeBytes: number }>> {
  const tiles = tilesOver(extent)
  const heights = new Map<TileAddress, Float32Array>()
  const waiting = [...tiles]
  let sizeBytes = 0
  let done = 0
  const work = async () => {
    for (let tile = waiting.shift(); tile; tile = waiting.shift()) {
      signal?.throwIfAborted()
      const pixels = await fetchTile(tileUrl(server.url, tile), signal)
      if (pixels?.rgba.length === TILE_CELLS * TILE_CELLS * 4) {
        heights.set(tile, heightsOfPixels(pixels.rgba))
        sizeBytes += pixels.sizeBytes
      }
      onProgress?.(++done / tiles.length)
    }
  }
  try {
    await Promise.all(Array.from({ length: AT_ONCE }, work))
  } catch {
    signal?.throwIfAborted()
    return bad({
      code: 'no-answer',
      at: 'online',
      message:
        'The server of elevations does not answer. Heights from the network are left out; look at its address, or try later.',
    })
  }
  const grid =
    heights.size > 0 ? gridOfTiles(`online ${server.credit}`, tiles, (tile) => heights.get(tile)) : null
  return ok({ grid, sizeBytes })
}

async function fetchPixels(url: string, signal: AbortSignal | undefined): Promise<TilePixels | undefined> {
  const response = await fetch(url, { credentials: 'omit', ...(signal && { signal }) })
  if (!response.ok) return undefined
  const blob = await response.blob()
  // A colour profile or a blend with alpha would bend the heights.
  const image = await createImageBitmap(blob, { colorSpaceConversion: 'none', premultiplyAlpha: 'none' })
  const canvas = new OffscreenCanvas(image.width, image.height)
  const context = canvas.getContext('2d', { willReadFrequently: true })
  if (!context) return undefined
  context.drawImage(image, 0, 0)
  const { data } = context.getImageData(0, 0, image.width, image.height)
  image.close()
  return { rgba: data, sizeBytes: blob.size }
}
