import type { ElevationGrid } from '../terrain/elevation-grid'
import type { FAR_JOBS } from './far-answers'
import { knownGrids } from './known-grids'
import { type WorkerClient, workerClient } from './worker-client'

/** Nine of ten circuits of a large party take long, s. */
const SILENCE_S = 60

/** How far a line could go, and where a thing would do best, off the main thread. */
export function farJobs(what: string): WorkerClient<typeof FAR_JOBS> & {
  readonly setGrids: (grids: readonly ElevationGrid[]) => void
} {
  const grids = knownGrids()
  const client = workerClient<typeof FAR_JOBS>({
    what,
    start: () => new Worker(new URL('./far-worker.ts', import.meta.url), { type: 'module' }),
    silenceS: SILENCE_S,
    prepare: (_, isNew) => grids.prepare(isNew),
  })
  return { ...client, setGrids: grids.set }
}
