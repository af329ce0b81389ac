import {
  gridOfTiles,
  heightsOfPixels,
  TILE_CELLS,
  type TileAddress,
  tilesOver,
  tileUrl,
} from '../files/elevation-tiles'
import { pictureSize } from '../files/picture-size'
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
export type FetchTile = (
  url: string,
  signal: AbortSignal | undefined,
) => Promise<TilePixels | WrongTile | undefined>

/** A picture that no tile of heights can be, refused before it was unpacked. */
export interface WrongTile {
  readonly wrong: string
}

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
  let wrong = ''
  const work = async () => {
    for (let tile = waiting.shift(); tile && !wrong; tile = waiting.shift()) {
      signal?.throwIfAborted()
      const pixels = await fetchTile(tileUrl(server.url, tile), signal)
      if (pixels && 'wrong' in pixels) wrong = pixels.wrong
      else if (pixels?.rgba.length === TILE_CELLS * TILE_CELLS * 4) {
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
  if (wrong) {
    const cells = `${TILE_CELLS} × ${TILE_CELLS}`
    const message = `The server of elevations sends ${wrong}, where tiles of ${cells} cells are wanted. Heights from it are left out; look at its address.`
    return bad({ code: 'wrong-tile', at: 'online', message })
  }
  const grid =
    heights.size > 0 ? gridOfTiles(`online ${server.credit}`, tiles, (tile) => heights.get(tile)) : null
  return ok({ grid, sizeBytes })
}

/** A tile of 256 × 256 cells, four bytes each, does not come larger than this even where nothing can be packed. */
const MOST_TILE_BYTES = 1_000_000

const fetchPixels: FetchTile = async (url, signal) => {
  const response = await fetch(url, { credentials: 'omit', ...(signal && { signal }) })
  if (!response.ok) return undefined
  if (Number(response.headers.get('content-length')) > MOST_TILE_BYTES) {
    await response.body?.cancel()
    return { wrong: 'files that are too large' }
  }
  const blob = await response.blob()
  const size = pictureSize(await blob.arrayBuffer())
  if (!size) return { wrong: 'something that is no picture' }
  if (size.width !== TILE_CELLS || size.height !== TILE_CELLS)
    return { wrong: `pictures of ${size.width} × ${size.height}` }
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
