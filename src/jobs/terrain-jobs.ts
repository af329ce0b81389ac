import type { Result } from '../problem'
import type { NearRequest, NearRoutes } from '../route/near-routes'
import type { NetRequest, SuggestedNet } from '../route/suggest-nets'
import type { RouteRequest, SuggestedRoute } from '../route/suggest-route'
import type { ElevationGrid, Extent } from '../terrain/elevation-grid'
import type { Relief, ReliefRequest } from '../terrain/relief'
import { knownGrids } from './known-grids'
import type { TerrainTable } from './terrain-worker'
import { type Following, workerClient } from './worker-client'

/** How long work is watched, and how it is stopped: undefined comes back then. */
export interface Watch extends Pick<Following<number>, 'signal' | 'about'> {
  /** Part done, 0…1. */
  readonly onProgress?: ((done: number) => void) | undefined
}

/** Long work on the ground, off the main thread, one job after the other. Undefined where it was stopped. */
export interface TerrainJobs {
  readGrid(
    file: File,
    extent: Extent | undefined,
    watch?: Watch,
  ): Promise<Result<ElevationGrid | null> | undefined>
  /** The grids that routes are sought on, and relief is drawn of, from now. */
  setGrids(grids: readonly ElevationGrid[]): void
  drawRelief(request: ReliefRequest): Promise<Result<Relief | null> | undefined>
  suggestRoute(request: RouteRequest, watch?: Watch): Promise<Result<SuggestedRoute> | undefined>
  nearRoutes(request: NearRequest, watch?: Watch): Promise<Result<NearRoutes> | undefined>
  suggestNets(request: NetRequest, watch?: Watch): Promise<Result<SuggestedNet[]> | undefined>
  dispose(): void
}

/** A large file on a slow disk, or a search on a busy machine, goes long between two words; nothing sound goes so long, s. */
const SILENCE_S = 120

const newWorker = () => new Worker(new URL('./terrain-worker.ts', import.meta.url), { type: 'module' })

export function terrainJobs(start: () => Worker = newWorker): TerrainJobs {
  const grids = knownGrids()
  const client = workerClient<TerrainTable>({
    what: 'The work on the ground',
    start,
    silenceS: SILENCE_S,
    prepare: (kind, isNew) => (kind === 'read' ? undefined : grids.prepare(isNew)),
  })
  const followed = ({ onProgress, ...watch }: Watch = {}) => ({ ...watch, onPart: onProgress })
  return {
    readGrid: async (file, extent, watch) =>
      flat(await client.ask('read', { file, extent }, followed(watch))),
    setGrids: grids.set,
    drawRelief: (request) => client.ask('relief', request),
    suggestRoute: async (request, watch) => flat(await client.ask('route', request, followed(watch))),
    nearRoutes: async (request, watch) => flat(await client.ask('routes', request, followed(watch))),
    suggestNets: async (request, watch) => flat(await client.ask('nets', request, followed(watch))),
    dispose: client.dispose,
  }
}

/** A job may fail, and what it found may be a refusal: to the person they are the same. */
const flat = <V>(result: Result<Result<V>> | undefined): Result<V> | undefined =>
  result?.ok ? result.value : result
