import type { TilePlace } from '../../files/maps/map-archive'
import type { Places } from '../../plan/places'
import { ok, type Result } from '../../problem'
import type { Extent } from '../../terrain/elevation-grid'
import { workerClient } from '../worker-client'
import type { MapFacts, MapSpec } from './map-spec'
import type { FetchedTiles, MAPS_JOBS, PartWeight, StripQuestion } from './maps-answers'

/** Looking at a map is a matter of moments: what takes so long is a trap, s. */
const SILENCE_S = 15

/** Reading maps off the main thread. */
export interface MapsJobs {
  /** The maps that are at hand from now. */
  readonly setSpecs: (specs: readonly MapSpec[]) => void
  readonly facts: (key: string) => Promise<Result<MapFacts> | undefined>
  /** A tile as a picture, so many px a side; null where there is nothing, or nobody wants it any more when its turn comes. */
  readonly tile: (
    key: string,
    place: TilePlace,
    sizePx: number,
    isWanted: () => boolean,
  ) => Promise<ImageBitmap | null>
  /** The part over an extent, down to a zoom, as a file of MBTiles. */
  readonly part: (key: string, extent: Extent, maxZoom: number) => Promise<Result<Blob> | undefined>
  /** Tiles that were fetched, as a file of MBTiles. */
  readonly pack: (fetched: FetchedTiles) => Promise<Result<Blob> | undefined>
  /** The ground of an extent in greys for paper, of maps from the lowest to the topmost; null where there is nothing. */
  readonly strip: (wanted: StripQuestion) => Promise<Blob | null>
  /** The places in a GeoPackage. */
  readonly geopackage: (file: File) => Promise<Result<Places> | undefined>
  readonly dispose: () => void
  /** What the part over an extent weighs, level by level; undefined where that cannot be told. */
  readonly weigh: (key: string, extent: Extent) => Promise<readonly PartWeight[] | undefined>
}

export function mapsJobs(
  start = () => new Worker(new URL('./maps-worker.ts', import.meta.url), { type: 'module' }),
): MapsJobs {
  let specs: readonly MapSpec[] = []
  let known: readonly MapSpec[] | undefined
  const client = workerClient<typeof MAPS_JOBS>({
    what: 'Reading the map',
    start,
    silenceS: SILENCE_S,
    prepare: (_kind, isNew) => {
      if (isNew) known = undefined
      if (known === specs) return undefined
      known = specs
      return { kind: 'specs', question: specs }
    },
  })
  /** Tiles that wait, the last asked for first: it is where the eye is. One is under way at a time. */
  const waiting: (() => Promise<void>)[] = []
  let isBusy = false
  const work = async () => {
    if (isBusy) return
    isBusy = true
    for (let next = waiting.pop(); next; next = waiting.pop()) await next()
    isBusy = false
  }
  return {
    setSpecs: (next) => {
      specs = next
    },
    facts: async (key) => {
      const result = await client.ask('facts', key)
      return result?.ok ? (result.value ?? undefined) : result
    },
    tile: (key, place, sizePx, isWanted) =>
      new Promise((resolve) => {
        waiting.push(async () => {
          const result = isWanted() ? await client.ask('tile', { key, place, sizePx }) : undefined
          resolve(result?.ok ? result.value : null)
        })
        void work()
      }),
    pack: (fetched) => client.ask('pack', fetched),
    strip: async (wanted) => {
      const result = await client.ask('strip', wanted)
      return result?.ok ? result.value : null
    },
    geopackage: async (file) => {
      const result = await client.ask('geopackage', file)
      return result?.ok ? result.value : result
    },
    dispose: client.dispose,
    part: async (key, extent, maxZoom) => {
      const result = await client.ask('part', { key, extent, maxZoom })
      return result?.ok ? (result.value ? ok(result.value) : undefined) : result
    },
    weigh: async (key, extent) => {
      const result = await client.ask('weigh', { key, extent })
      return result?.ok ? (result.value ?? undefined) : undefined
    },
  }
}
