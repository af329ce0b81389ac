import { tileUrl } from '../files/elevation-tiles'
import { type TilePlace, tilesOver } from '../files/maps/map-archive'
import { pictureSize } from '../files/picture-size'
import type { FetchedTile, PartWeight } from '../jobs/maps/maps-answers'
import type { Watch } from '../jobs/terrain-jobs'
import { bad, ok, type Result } from '../problem'
import type { Extent } from '../terrain/elevation-grid'
import { KEEPING } from './keeping-bounds'

/** What a request for one tile came to; undefined where the server has none there. Rejects where it does not answer. */
export type FetchPicture = (
  url: string,
  signal: AbortSignal | undefined,
) => Promise<Uint8Array<ArrayBuffer> | { readonly wrong: string } | undefined>

/** A server, and how it is asked; both replaced in tests. */
export interface Asking {
  readonly fetchPicture?: FetchPicture
  readonly pause?: (ms: number) => Promise<void>
}

const refused = (message: string): Result<never> => bad({ code: 'tiles-not-kept', at: 'online', message })

/**
 * What the part of a server's map over an extent weighs, level by level: its tiles counted, and their bytes guessed from one tile of each
 * level, the middle one. Levels that are too much to keep are left out.
 */
export async function weighOnline(
  url: string,
  extent: Extent,
  asking: Asking = {},
  watch: Watch = {},
): Promise<Result<readonly PartWeight[]>> {
  const widest = Math.max(extent.eastDeg - extent.westDeg, 1e-6)
  const levels: TilePlace[][] = []
  let count = 0
  for (let zoom = Math.max(0, Math.floor(Math.log2(360 / widest)) - 1); zoom <= KEEPING.deepestZoom; zoom++) {
    const tiles = [...tilesOver(extent, zoom)]
    count += tiles.length
    if (count > KEEPING.mostTiles) break
    levels.push(tiles)
  }
  const middles = levels.map((tiles) => tiles[Math.floor(tiles.length / 2)]!)
  const found = await tilesOf(url, middles, asking, watch)
  if (!found.ok) return found
  const bytesAt = new Map(found.value.map(({ place, bytes }) => [place, bytes.length]))
  const weights: PartWeight[] = []
  let sum = 0
  for (const [i, tiles] of levels.entries()) {
    const bytes = (bytesAt.get(middles[i]!) ?? 0) * tiles.length
    sum += bytes
    if (sum > KEEPING.mostBytes) break
    weights.push({ zoom: middles[i]!.zoom, tiles: bytes > 0 ? tiles.length : 0, bytes })
  }
  return weights.some(({ tiles }) => tiles > 0)
    ? ok(weights)
    : refused('The server has no tiles around the plan, or they are too large to be kept.')
}

/** The tiles of a server over an extent, from one zoom to another, asked for no faster than is kind to it. */
export const onlineTiles = (
  url: string,
  extent: Extent,
  zooms: readonly number[],
  asking: Asking,
  watch: Watch,
): Promise<Result<readonly FetchedTile[]>> =>
  tilesOf(
    url,
    zooms.flatMap((zoom) => [...tilesOver(extent, zoom)]),
    asking,
    watch,
  )

async function tilesOf(
  url: string,
  places: readonly TilePlace[],
  { fetchPicture = fetchTile, pause = sleep }: Asking,
  { signal, onProgress }: Watch,
): Promise<Result<readonly FetchedTile[]>> {
  const found: FetchedTile[] = []
  let sum = 0
  for (const [i, place] of places.entries()) {
    signal?.throwIfAborted()
    let got: Awaited<ReturnType<FetchPicture>>
    try {
      ;[got] = await Promise.all([fetchPicture(tileUrl(url, place), signal), pause(1000 / KEEPING.tilesPerS)])
    } catch {
      signal?.throwIfAborted()
      return refused(
        'The server does not answer, or lets no page take its tiles: nothing was kept. Look at its address, or try later.',
      )
    }
    if (got && 'wrong' in got) return refused(`The server ${got.wrong}: nothing was kept.`)
    if (got) {
      found.push({ place, bytes: got })
      sum += got.length
    }
    if (sum > KEEPING.mostBytes)
      return refused(
        `The tiles come to more than ${KEEPING.mostBytes / 1e6} MB: nothing was kept. Take less near ones.`,
      )
    onProgress?.((i + 1) / places.length)
  }
  return ok(found)
}

const sleep = (ms: number) => new Promise<void>((done) => setTimeout(done, ms))

/** A tile's picture is 256, 512 or 1024 px a side. */
const MOST_PX = 1024
const MOST_TILE_BYTES = 2e6
/** There is nothing at that place. */
const NONE_THERE = [204, 404, 410]

const fetchTile: FetchPicture = async (url, signal) => {
  const response = await fetch(url, { credentials: 'omit', ...(signal && { signal }) })
  if (NONE_THERE.includes(response.status)) return undefined
  if (!response.ok) {
    void response.body?.cancel()
    return { wrong: response.status === 429 ? 'asks to be left alone (429)' : `refuses (${response.status})` }
  }
  if (Number(response.headers.get('content-length')) > MOST_TILE_BYTES) {
    void response.body?.cancel()
    return { wrong: 'sends files that are too large for tiles' }
  }
  const bytes = new Uint8Array(await response.arrayBuffer())
  const size = bytes.length <= MOST_TILE_BYTES ? pictureSize(bytes.buffer) : undefined
  if (!size) return { wrong: 'sends something that is no picture' }
  if (Math.max(size.width, size.height) > MOST_PX)
    return { wrong: `sends pictures of ${size.width} × ${size.height}, which no tile has` }
  return bytes
}
