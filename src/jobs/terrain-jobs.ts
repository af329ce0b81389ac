import type { Result } from '../problem'
import type { NetRequest, SuggestedNet } from '../route/suggest-nets'
import type { RouteRequest, SuggestedRoute } from '../route/suggest-route'
import type { ElevationGrid, Extent } from '../terrain/elevation-grid'
import type { Relief, ReliefRequest } from '../terrain/relief'
import type { TerrainAnswer, TerrainTask } from './terrain-worker'

/** How long work reports on itself, and how it is stopped: an abort rejects with its reason. */
export interface Watch {
  readonly signal?: AbortSignal
  /** Part done, 0…1. */
  readonly onProgress?: (done: number) => void
}

/** Long work on the ground, off the main thread, one job after the other. */
export interface TerrainJobs {
  readGrid(file: File, extent: Extent | undefined, watch?: Watch): Promise<Result<ElevationGrid | null>>
  /** The grids that routes are sought on, and relief is drawn of, from now. */
  setGrids(grids: readonly ElevationGrid[]): void
  drawRelief(request: ReliefRequest): Promise<Relief | null>
  suggestRoute(request: RouteRequest, watch?: Watch): Promise<Result<SuggestedRoute>>
  suggestNets(request: NetRequest, watch?: Watch): Promise<Result<SuggestedNet[]>>
  dispose(): void
}

type Plain<T> = T extends unknown ? Omit<T, 'job'> : never

const newWorker = () => new Worker(new URL('./terrain-worker.ts', import.meta.url), { type: 'module' })

/** Starts its worker with the first job, and again after one that was stopped: a worker deep in a search hears nothing. */
export function terrainJobs(startWorker: () => Worker = newWorker): TerrainJobs {
  let worker: Worker | undefined
  let grids: readonly ElevationGrid[] = []
  let gridsSent = true
  let lastJob = 0
  let tail: Promise<unknown> = Promise.resolve()

  const end = () => {
    worker?.terminate()
    worker = undefined
    gridsSent = grids.length === 0
  }

  const send = (task: Plain<TerrainTask>, { signal, onProgress }: Watch): Promise<TerrainAnswer> =>
    new Promise((resolve, reject) => {
      signal?.throwIfAborted()
      worker ??= startWorker()
      const own = worker
      const job = ++lastJob
      const settle = (finish: () => void) => {
        own.removeEventListener('message', onMessage)
        own.removeEventListener('error', onError)
        signal?.removeEventListener('abort', onAbort)
        finish()
      }
      const onMessage = ({ data }: MessageEvent<TerrainAnswer>) => {
        if (data.job !== job) return
        if ('done' in data) onProgress?.(data.done)
        else settle(() => resolve(data))
      }
      const onError = (event: ErrorEvent) =>
        settle(() => {
          end()
          reject(new Error(event.message || 'the terrain worker failed'))
        })
      const onAbort = () =>
        settle(() => {
          end()
          reject(signal?.reason)
        })
      own.addEventListener('message', onMessage)
      own.addEventListener('error', onError)
      signal?.addEventListener('abort', onAbort)
      own.postMessage({ ...task, job })
    })

  /** Waits its turn, so that a job is stopped without taking another's worker from it. */
  const run = (task: Plain<TerrainTask>, watch: Watch = {}): Promise<TerrainAnswer> => {
    const turn = tail.then(async () => {
      watch.signal?.throwIfAborted()
      if (!gridsSent && task.kind !== 'read') {
        gridsSent = true
        await send({ kind: 'grids', grids }, {})
      }
      return send(task, watch)
    })
    tail = turn.catch(() => {})
    return turn
  }

  return {
    readGrid: async (file, extent, watch) => {
      const answer = await run({ kind: 'read', file, extent }, watch)
      if (!('grid' in answer)) throw new Error('the terrain worker answered another question')
      return answer.grid
    },
    setGrids: (next) => {
      grids = next
      gridsSent = false
    },
    drawRelief: async (request) => {
      const answer = await run({ kind: 'relief', request })
      if (!('relief' in answer)) throw new Error('the terrain worker answered another question')
      return answer.relief
    },
    suggestRoute: async (request, watch) => {
      const answer = await run({ kind: 'route', request }, watch)
      if (!('route' in answer)) throw new Error('the terrain worker answered another question')
      return answer.route
    },
    suggestNets: async (request, watch) => {
      const answer = await run({ kind: 'nets', request }, watch)
      if (!('nets' in answer)) throw new Error('the terrain worker answered another question')
      return answer.nets
    },
    dispose: end,
  }
}
